package railglow.fuzz;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfEnvironmentVariable;
import org.junit.jupiter.api.io.TempDir;
import railglow.process.ChildJava;

/**
 * Every parser fuzzed for a moment, guided by coverage, two at a time, within a time that is given
 * for all of them together: what a build server runs each time. Inputs that break a parser stay in
 * {@code target/fuzz-broken}; put them into the resources of the tests.
 */
@EnabledIfEnvironmentVariable(named = "FUZZ_SECONDS", matches = "[0-9]+")
class BoundedFuzzTest {
  private static final Path BROKEN = Path.of("target/fuzz-broken").toAbsolutePath();
  private static final int AT_A_TIME = 2;
  private static final int LEAST_SECONDS = 1;

  /** What a process takes before the first input is tried. */
  private static final double START_SECONDS = 3.5;

  /** An input that takes longer breaks its parser. */
  private static final int MOST_SECONDS_FOR_ONE = 20;

  private static final String NOT_REACHED = ": not reached, this machine is too busy";

  private static final Pattern DONE = Pattern.compile("Done (\\d+) runs");
  private static final Pattern COVERED = Pattern.compile(" cov: (\\d+) ");

  @TempDir Path folder;

  @Test
  void nothingButDocumentedErrorsComesOut() throws Exception {
    int seconds = Integer.parseInt(System.getenv("FUZZ_SECONDS"));
    double each = seconds * AT_A_TIME / (double) FuzzTargets.ALL.size() - START_SECONDS;
    int fuzzing = Math.max(LEAST_SECONDS, (int) each);
    Files.createDirectories(BROKEN);
    long end = System.nanoTime() + seconds * 1_000_000_000L;
    ExecutorService pool = Executors.newFixedThreadPool(AT_A_TIME);
    List<Future<String>> results = new ArrayList<>();
    for (FuzzTargets.Target target : inTurn()) {
      Callable<String> work =
          () -> System.nanoTime() < end ? run(target, fuzzing) : target + NOT_REACHED;
      results.add(pool.submit(work));
    }
    pool.shutdown();
    List<String> broken = new ArrayList<>();
    int reached = 0;
    for (Future<String> result : results) {
      String line = result.get();
      System.out.println("fuzzed " + line);
      reached += line.endsWith(NOT_REACHED) ? 0 : 1;
      if (line.contains("BROKEN")) {
        broken.add(line);
      }
    }
    assertEquals(List.of(), broken);
    assertTrue(reached > 0, "no parser was reached in " + seconds + " s");
  }

  /** Another first one each minute: a machine too busy for all of them reaches each some time. */
  private static List<FuzzTargets.Target> inTurn() {
    List<FuzzTargets.Target> targets = new ArrayList<>(FuzzTargets.ALL);
    long minutes = System.currentTimeMillis() / 60_000;
    Collections.rotate(targets, (int) (minutes % targets.size()));
    return targets;
  }

  private String run(FuzzTargets.Target target, int seconds) throws Exception {
    Path seeds = seeds(target);
    Path log = folder.resolve(target + ".log");
    List<String> command =
        ChildJava.command(
            List.of("-Xmx512m", "-Djava.awt.headless=true"),
            List.of(
                "com.code_intelligence.jazzer.Jazzer",
                "--target_class=" + FuzzOne.class.getName(),
                "--instrumentation_includes=railglow.**",
                "--disabled_hooks=com.code_intelligence.jazzer.sanitizers.FilePathTraversal",
                "--reproducer_path=" + folder,
                "-max_total_time=" + seconds,
                "-timeout=" + MOST_SECONDS_FOR_ONE,
                "-artifact_prefix=" + BROKEN + "/" + target + "-",
                seeds.toString()));
    ProcessBuilder builder =
        new ProcessBuilder(command).redirectErrorStream(true).redirectOutput(log.toFile());
    builder.environment().put("FUZZ_TARGET", target.fuzz().getName());
    Process process = builder.start();
    if (!process.waitFor(seconds + 60L, TimeUnit.SECONDS)) {
      process.destroyForcibly();
      return target + NOT_REACHED;
    }
    String said = Files.readString(log);
    Matcher done = DONE.matcher(said);
    if (process.exitValue() != 0 || !done.find()) {
      return target + ": BROKEN, see " + BROKEN + "\n" + said;
    }
    String covered =
        COVERED
            .matcher(said)
            .results()
            .map(m -> m.group(1))
            .reduce((a, b) -> b)
            .map(branches -> branches + " branches covered")
            .orElse("its good input alone, the coverage not yet known");
    return target + ": " + done.group(1) + " inputs in " + seconds + " s, " + covered;
  }

  /** Good input, and what once broke the parser. */
  private Path seeds(FuzzTargets.Target target) throws IOException {
    Path seeds = Files.createDirectory(folder.resolve(target.toString()));
    int number = 0;
    for (byte[] seed : target.seeds().get().toList()) {
      Files.write(seeds.resolve("seed" + number++), seed);
    }
    Path once =
        Path.of("src/test/resources").resolve(ParsersKeepTheirWordTest.inputsFolder(target));
    if (Files.isDirectory(once)) {
      try (Stream<Path> files = Files.walk(once)) {
        for (Path file : files.filter(Files::isRegularFile).toList()) {
          Files.copy(file, seeds.resolve("once" + number++));
        }
      }
    }
    return seeds;
  }
}
