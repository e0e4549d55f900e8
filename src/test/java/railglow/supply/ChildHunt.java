package railglow.supply;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import railglow.process.ChildJava;
import railglow.sim.BenchPorts;
import railglow.sim.BenchScenarios;
import railglow.sim.SimulatedBench;
import railglow.sim.truth.TruthEvent;
import railglow.time.SystemClock;

/** A hunt in a process of its own, against a simulated bench in this one. */
final class ChildHunt implements AutoCloseable {
  private final Path folder;
  private final SimulatedBench bench;
  private final boolean ownsBench;
  private String supplyAddress;
  private int heapMebibytes = 256;
  private int fileKibibytes;
  private boolean companion = true;
  private List<String> main = List.of("railglow.cli.Main");
  private final List<String> options = new ArrayList<>();
  private final Map<String, String> environment = new HashMap<>();
  private Process process;
  private Path log;
  private long faultNanos;

  ChildHunt(Path folder) throws IOException {
    this(
        folder,
        SimulatedBench.start(BenchScenarios.hx12(), BenchPorts.ANY, SystemClock.INSTANCE),
        true);
  }

  /** With the supply on a pseudo-terminal instead of a socket. */
  static ChildHunt onTerminal(Path folder) throws IOException {
    Path terminal = folder.resolve("supply");
    ChildHunt hunt =
        new ChildHunt(
            folder,
            SimulatedBench.start(
                BenchScenarios.hx12(), BenchPorts.ANY.withTerminal(terminal), SystemClock.INSTANCE),
            true);
    hunt.supplyAddress = "serial:" + terminal;
    return hunt;
  }

  private ChildHunt(Path folder, SimulatedBench bench, boolean ownsBench) {
    this.folder = folder;
    this.bench = bench;
    this.ownsBench = ownsBench;
    this.supplyAddress = "tcp://127.0.0.1:" + bench.supplyAddress().getPort();
  }

  /** Another controller at the same bench. */
  ChildHunt second() throws IOException {
    return new ChildHunt(Files.createDirectories(folder.resolve("second")), bench, false);
  }

  ChildHunt withHeapMebibytes(int mebibytes) {
    heapMebibytes = mebibytes;
    return this;
  }

  /** No file may grow beyond this: what a program sees of a full disk. */
  ChildHunt withFileSizeLimitKibibytes(int kibibytes) {
    fileKibibytes = kibibytes;
    return this;
  }

  /** Another main class with its first arguments, in place of the program's own. */
  ChildHunt withMain(Class<?> other, String... first) {
    List<String> words = new ArrayList<>(List.of(other.getName()));
    words.addAll(List.of(first));
    main = words;
    return this;
  }

  /** For the end of the command line. */
  ChildHunt withOptions(String... more) {
    options.addAll(List.of(more));
    return this;
  }

  ChildHunt withEnvironment(String name, String value) {
    environment.put(name, value);
    return this;
  }

  /** Nothing but the program itself: neither companion nor the supply's own watchdog. */
  ChildHunt alone() {
    companion = false;
    return this;
  }

  ChildHunt start() throws IOException {
    Path instruments = Path.of("instruments").toAbsolutePath();
    String benchText =
        Files.readString(instruments.resolve("bench-simulated.yaml"))
            .replace("descriptor: ", "descriptor: " + instruments + "/")
            .replace("tcp://127.0.0.1:5025", supplyAddress)
            .replace("127.0.0.1:5600", "127.0.0.1:" + bench.cameraAddress().getPort())
            .replace(
                companion ? "" : instruments + "/supply-simulated.yaml",
                companion ? "" : withoutWatchdog(instruments).toString())
            .replace("companion: yes", companion ? "companion: yes" : "companion: no")
            .concat(companion ? "" : "accepts-missing: [companion]\n");
    Path benchFile = Files.writeString(folder.resolve("bench.yaml"), benchText);
    List<String> command = new ArrayList<>();
    if (fileKibibytes > 0) {
      command.addAll(List.of("bash", "-c", "ulimit -f " + fileKibibytes + "; exec \"$@\"", "-"));
    }
    command.addAll(ChildJava.command(List.of("-Xmx" + heapMebibytes + "m"), main));
    command.addAll(
        List.of("hunt", "--bench", benchFile.toString(), "--runs", folder.resolve("runs") + ""));
    command.addAll(options);
    log = folder.resolve("hunt.log");
    ProcessBuilder builder =
        new ProcessBuilder(command).redirectErrorStream(true).redirectOutput(log.toFile());
    builder.environment().putAll(environment);
    process = builder.start();
    return this;
  }

  private Path withoutWatchdog(Path instruments) throws IOException {
    String text = Files.readString(instruments.resolve("supply-simulated.yaml"));
    String cut = text.substring(0, text.indexOf("\nwatchdog:"));
    return Files.writeString(folder.resolve("supply-without-watchdog.yaml"), cut + "\n");
  }

  long pid() {
    return process.pid();
  }

  boolean outputIsOn() {
    return bench.truth().outputIsOn();
  }

  /**
   * Waits until the output is on, for the first time or again. A hunt that gave up because the
   * machine is too busy to keep up is started again.
   */
  void awaitOn() throws InterruptedException, IOException {
    int again = 3;
    for (int i = 0; i < 9000 && !outputIsOn(); i++) {
      if (!process.isAlive() && again-- > 0 && endedByABusyMachine()) {
        start();
      } else if (!process.isAlive()) {
        throw new AssertionError("the hunt ended before the first pulse: " + output());
      }
      Thread.sleep(5);
    }
    Thread.sleep(100);
  }

  private boolean endedByABusyMachine() throws IOException {
    String said = output();
    return Stream.of(
            "can't keep",
            "loop stalled",
            "frames stale",
            "readings stale",
            "permit lapsed",
            "not ready")
        .anyMatch(said::contains);
  }

  /** The time of a fault that is no signal. */
  void faultNow() {
    faultNanos = bench.nanos();
  }

  void signal(String name) throws IOException, InterruptedException {
    faultNanos = faultNanos == 0 ? bench.nanos() : faultNanos;
    new ProcessBuilder("kill", "-" + name, Long.toString(process.pid())).start().waitFor();
  }

  /** From the first signal to the true switching off; fails when it does not come in time. */
  double millisToOff(int seconds) throws InterruptedException {
    for (int i = 0; i < seconds * 200; i++) {
      if (!outputIsOn()) {
        Optional<TruthEvent> last = bench.truth().last(TruthEvent.Kind.OUTPUT);
        return Math.max(0, (last.orElseThrow().nanos() - faultNanos) / 1e6);
      }
      Thread.sleep(5);
    }
    throw new AssertionError("the output is still on after " + seconds + " s");
  }

  int exitCode(int seconds) throws InterruptedException, IOException {
    if (!process.waitFor(seconds, TimeUnit.SECONDS)) {
      throw new AssertionError("the hunt does not end: " + output());
    }
    return process.exitValue();
  }

  String output() throws IOException {
    return Files.readString(log);
  }

  /**
   * The first line of its output that holds a text, with the indented lines that go on with it;
   * empty when there is none.
   */
  String lineWith(String text) throws IOException {
    StringBuilder found = new StringBuilder();
    for (String line : output().lines().toList()) {
      boolean goesOn = found.length() > 0 && line.startsWith("  ") && !line.isBlank();
      if (goesOn || found.length() == 0 && line.contains(text)) {
        found.append(found.length() > 0 ? " " : "").append(line.strip());
      } else if (found.length() > 0) {
        break;
      }
    }
    return found.toString();
  }

  @Override
  public void close() {
    if (process != null && process.isAlive()) {
      process.destroyForcibly();
    }
    if (ownsBench) {
      bench.close();
    }
  }
}
