package railglow.process;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import railglow.journal.FrameStoreReader;
import railglow.journal.RunFolder;
import railglow.observed.Frame;

/**
 * Prints how long whole commands take as a person waits for them, through the launcher that the
 * build leaves in {@code target}: help, start to first pulse, last pulse to report, replay.
 *
 * <p>Arguments: repetitions, minutes of the run that is replayed.
 */
public final class WholeCommandTimes {
  private static final Path LAUNCHER = Path.of("target", "railglow").toAbsolutePath();
  private static final String OUTPUT = "output.txt";
  private static final int STOPPED_BY_A_LIMIT = 4;

  /** On a busy machine a limit on the age of readings stops a hunt now and then. */
  private static final int ATTEMPTS = 5;

  private static final double NO_GOAL = Double.NaN;
  private static final double TIMES_REAL_TIME = 100;

  private WholeCommandTimes() {}

  public static void main(String[] args) throws Exception {
    int times = args.length > 0 ? Integer.parseInt(args[0]) : 9;
    double minutes = args.length > 1 ? Double.parseDouble(args[1]) : 10;
    Path folder = Files.createTempDirectory("whole-commands");
    say("| what | median s | least s | most s | goal |");
    say("|---|---|---|---|---|");
    double[] java = new double[times];
    double[] help = new double[times];
    for (int i = 0; i < times; i++) {
      java[i] = seconds(folder, ChildJava.PROGRAM, "-Xshare:auto", "-version");
      help[i] = seconds(folder, LAUNCHER.toString(), "--help");
    }
    row("a Java that prints its version", java, NO_GOAL);
    row("`railglow --help`", help, 0.25);
    hunts(folder, times);
    replay(folder, minutes, median(java));
    try (var files = Files.walk(folder)) {
      for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
        Files.delete(file);
      }
    }
  }

  private static void hunts(Path folder, int times) throws Exception {
    double[] start = new double[times];
    double[] end = new double[times];
    for (int i = 0; i < times; i++) {
      double[] startAndEnd = new double[0];
      for (int attempt = 0; startAndEnd.length == 0; attempt++) {
        if (attempt == ATTEMPTS) {
          throw new IllegalStateException("the machine is too busy: limits stop every hunt");
        }
        startAndEnd = hunt(Files.createDirectory(folder.resolve("hunt" + i + "-" + attempt)));
      }
      start[i] = startAndEnd[0];
      end[i] = startAndEnd[1];
    }
    row("`hunt` to its first pulse", start, NO_GOAL);
    row("the same without the sequence's lead-in and first quarter, 1 s", less(start, 1), 1);
    row("last pulse to the end of the process, report written", end, NO_GOAL);
    row("the same without the sequence's last quarter and rest, 1.5 s", less(end, 1.5), 2);
  }

  /** Seconds to the first pulse, and from the last; none when a limit stopped the hunt. */
  private static double[] hunt(Path own) throws Exception {
    try (ServedBench bench = ServedBench.start(own)) {
      Path sequence = bench.sequence("1 V", "500 mA", 5, "no");
      Files.writeString(
          sequence, Files.readString(sequence).replace("lead-in: 1 s", "lead-in: 0.5 s"));
      long began = System.nanoTime();
      if (!done(own, bench.huntWords(LAUNCHER.toString(), sequence))) {
        return new double[0];
      }
      long ended = System.nanoTime();
      List<JsonNode> edges =
          bench.truth().stream().filter(e -> e.path("kind").asText().equals("output")).toList();
      long first =
          edges.stream()
              .filter(e -> e.get("on").asBoolean())
              .findFirst()
              .orElseThrow()
              .get("nanos")
              .asLong();
      long last =
          edges.stream()
              .filter(e -> !e.get("on").asBoolean())
              .reduce((a, b) -> b)
              .orElseThrow()
              .get("nanos")
              .asLong();
      return new double[] {(first - began) * 1e-9, (ended - last) * 1e-9};
    }
  }

  private static double[] less(double[] seconds, double part) {
    return Arrays.stream(seconds).map(one -> one - part).toArray();
  }

  private static void replay(Path folder, double minutes, double javaSeconds) throws Exception {
    RecordedMinutes recorded = RecordedMinutes.write(folder, minutes);
    seconds(
        folder,
        LAUNCHER.toString(),
        "import",
        "--frames",
        recorded.frames().toString(),
        "--edges",
        recorded.edges().toString(),
        "--frame-rate",
        "25 Hz",
        "--kelvin-per-count",
        "20 mK",
        "--runs",
        folder.resolve("runs").toString());
    Files.delete(recorded.frames());
    Path run;
    try (var runs = Files.list(folder.resolve("runs"))) {
      run = runs.filter(Files::isDirectory).findFirst().orElseThrow();
    }
    double[] verify = new double[3];
    double[] read = new double[verify.length];
    double[] anew = new double[verify.length];
    long bytes = 0;
    for (int i = 0; i < verify.length; i++) {
      long before = System.nanoTime();
      bytes = readAll(run);
      read[i] = (System.nanoTime() - before) * 1e-9;
      verify[i] = seconds(folder, LAUNCHER.toString(), "replay", "--verify", run.toString());
    }
    for (int i = 0; i < anew.length; i++) {
      anew[i] = seconds(folder, LAUNCHER.toString(), "replay", run.toString());
    }
    row(String.format(Locale.ROOT, "reading the run's %.0f MB", bytes * 1e-6), read, NO_GOAL);
    decoding(run);
    double goal = minutes * 60 / TIMES_REAL_TIME;
    row(String.format(Locale.ROOT, "`replay --verify` of %.1f min", minutes), verify, goal);
    row("`replay` of the same, pictures and report written anew", anew, goal);
    double floor = median(read) + javaSeconds;
    say("");
    say(
        String.format(
            Locale.ROOT,
            "Times real time: `replay --verify` %.1f, `replay` %.1f (goal %.0f); times reading the"
                + " bytes and starting a Java: %.1f, %.1f (goal 1.5).",
            minutes * 60 / median(verify),
            minutes * 60 / median(anew),
            TIMES_REAL_TIME,
            median(verify) / floor,
            median(anew) / floor));
  }

  /** What any replay does at least; the first times are with code that is not compiled yet. */
  private static void decoding(Path run) throws IOException {
    double[] seconds = new double[5];
    int count = 0;
    for (int i = 0; i < seconds.length; i++) {
      long before = System.nanoTime();
      try (FrameStoreReader frames = FrameStoreReader.open(new RunFolder(run).frames())) {
        Frame frame = new Frame(frames.newSamples());
        count = 0;
        while (frames.next(frame)) {
          count++;
        }
      }
      seconds[i] = (System.nanoTime() - before) * 1e-9;
    }
    row(
        "decoding its " + count + " frames, nothing else, one thread, warm",
        Arrays.copyOfRange(seconds, 2, seconds.length),
        NO_GOAL);
  }

  private static long readAll(Path run) throws IOException {
    ByteBuffer buffer = ByteBuffer.allocateDirect(1 << 20);
    long total = 0;
    List<Path> files;
    try (var all = Files.walk(run)) {
      files = all.filter(Files::isRegularFile).toList();
    }
    for (Path file : files) {
      try (FileChannel channel = FileChannel.open(file)) {
        for (int n = channel.read(buffer.clear()); n >= 0; n = channel.read(buffer.clear())) {
          total += n;
        }
      }
    }
    return total;
  }

  private static double seconds(Path folder, String... words) throws Exception {
    long before = System.nanoTime();
    if (!done(folder, Arrays.asList(words))) {
      throw new IllegalStateException(Arrays.toString(words) + " was stopped");
    }
    return (System.nanoTime() - before) * 1e-9;
  }

  /** Whether a command did its work; false when a limit stopped it. */
  private static boolean done(Path folder, List<String> words) throws Exception {
    int code =
        new ProcessBuilder(new ArrayList<>(words))
            .redirectErrorStream(true)
            .redirectOutput(folder.resolve(OUTPUT).toFile())
            .start()
            .waitFor();
    if (code != 0 && code != STOPPED_BY_A_LIMIT) {
      throw new IllegalStateException(
          words + " failed:\n" + Files.readString(folder.resolve(OUTPUT)));
    }
    return code == 0;
  }

  private static void row(String what, double[] seconds, double goalSeconds) {
    double[] sorted = seconds.clone();
    Arrays.sort(sorted);
    String goal =
        Double.isNaN(goalSeconds)
            ? ""
            : String.format(
                Locale.ROOT,
                "%.3g s, %s",
                goalSeconds,
                median(sorted) <= goalSeconds ? "met" : "missed");
    say(
        String.format(
            Locale.ROOT,
            "| %s | %.2f | %.2f | %.2f | %s |",
            what,
            median(sorted),
            sorted[0],
            sorted[sorted.length - 1],
            goal));
  }

  private static double median(double[] values) {
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    return sorted[sorted.length / 2];
  }

  private static void say(String line) {
    System.out.println(line);
  }
}
