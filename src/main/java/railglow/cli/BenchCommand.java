package railglow.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import railglow.camera.CameraDescriptor;
import railglow.camera.FrameSource;
import railglow.camera.FrameSources;
import railglow.config.Bench;
import railglow.config.BenchFile;
import railglow.config.CameraDescriptorFile;
import railglow.config.MeasuredCamera;
import railglow.config.SupplyDescriptorFile;
import railglow.sim.BenchPorts;
import railglow.sim.SimulatedBench;
import railglow.supply.ConnectedDevices;
import railglow.supply.SupplyDescriptor;
import railglow.time.MonotonicClock;
import railglow.time.SystemClock;

/** Identifies and tries what is on the bench, with the output off all the time. */
@Command(
    name = "bench",
    mixinStandardHelpOptions = true,
    description = {
      "With nothing but an ADDRESS (tcp://HOST:PORT, serial:/dev/ttyUSB0[?baud=9600] or"
          + " usbtmc:/dev/usbtmc0): asks who is there in every usual way, finds the descriptor that"
          + " fits, tries every word of it with the output off, and prints how a bench file begins.",
      "With a bench: identifies the supply, tries every word its descriptor uses with the output off, and says what"
          + " protects this bench; then watches the camera: rate, lost frames, noise, bad pixels, one"
          + " frame as a picture.",
      "The output is never switched on, except with --align: then a small resistor in view is pulsed,"
          + " and the camera's latency and time constant are fitted to its warming.",
      "With --keep what was measured is kept beside the bench file: runs and forecasts then use it."
    })
final class BenchCommand implements Callable<Integer> {
  private final Terminal terminal;
  private final MonotonicClock clock = SystemClock.INSTANCE;
  @Spec private CommandSpec spec;

  @Parameters(
      index = "0",
      arity = "0..1",
      paramLabel = "ADDRESS",
      description = "a supply that has no bench file yet")
  private String address;

  @Option(
      names = "--supply",
      paramLabel = "FILE",
      description = "with an ADDRESS: the descriptor to try; without it the shipped ones")
  private String supply;

  @Option(names = "--bench", paramLabel = "FILE", description = "the bench file")
  private String bench;

  @Option(names = "--simulated", description = "the simulated bench; it starts by itself")
  private boolean simulated;

  @Option(
      names = "--watch",
      paramLabel = "SECONDS",
      converter = Quantities.Seconds.class,
      description = "how long the camera is watched (default: 10 s)")
  private double watchSeconds = 10;

  @Option(
      names = "--camera-only",
      description = "leave the supply alone; only its bench file must be readable")
  private boolean cameraOnly;

  @Option(
      names = "--keep",
      description =
          "keep what was measured of the camera beside the bench file, in <bench>-measured.yaml,"
              + " for plan, hunt and touch to use")
  private boolean keep;

  @Mixin private AlignmentOptions alignment = new AlignmentOptions();

  @Option(
      names = "--into",
      paramLabel = "FOLDER",
      description = "where picture and transcript are put (default: bench-check)")
  private Path folder = Path.of("bench-check");

  BenchCommand(Terminal terminal) {
    this.terminal = terminal;
  }

  @Override
  public Integer call() throws Exception {
    if (address != null || supply != null) {
      return atAddress();
    }
    if (bench == null && !simulated) {
      List<String> addresses = ConnectedDevices.addresses(Path.of("/dev"));
      terminal.say(
          addresses.isEmpty()
              ? "No device file of this machine looks like an instrument."
              : "Connected  " + String.join("\n           ", addresses));
      throw new UserMistake(
          "which bench? Give --bench FILE or --simulated; an ADDRESS alone says what is there");
    }
    Path path =
        ShippedFiles.find(simulated ? "bench-simulated" : bench, "instruments", "bench file");
    if (keep && (simulated || !Files.isRegularFile(Path.of(bench)))) {
      throw new UserMistake(
          "--keep writes beside your own bench file; "
              + (simulated ? "--simulated has none" : "'" + bench + "' comes with the program")
              + ": give --bench with a file of yours");
    }
    Bench read = BenchFile.read(path);
    if (!simulated) {
      return alignment.wanted ? align(path, read) : check(read, path);
    }
    String scenario = alignment.wanted ? "resistor" : "hx12";
    try (SimulatedBench served =
        SimulatedBench.start(
            SimulateCommand.scenario(scenario, List.of()), BenchPorts.ANY, clock)) {
      Bench simulatedBench = SimulatedBenches.joined(read, served);
      return alignment.wanted ? align(path, simulatedBench) : check(simulatedBench, path);
    }
  }

  private int atAddress() throws Exception {
    if (address == null) {
      throw new UserMistake("--supply goes with an ADDRESS; a bench file names its own descriptor");
    }
    if (bench != null || simulated || keep || cameraOnly || alignment.wanted) {
      throw new UserMistake(
          "an ADDRESS stands alone or with --supply and --into: camera, --keep and --align need a"
              + " bench file");
    }
    return new AddressTrial(terminal, clock, folder, supply != null)
        .run(address, supply == null ? KnownSupplies.shipped(terminal) : KnownSupplies.of(supply));
  }

  private int align(Path benchFile, Bench opened) throws Exception {
    RunSetup setup = RunSetup.of(alignment.asRun(benchFile, folder));
    List<String> words = new ArrayList<>(List.of("railglow"));
    words.addAll(spec.root().commandLine().getParseResult().originalArgs());
    return new AlignmentAtBench(terminal, folder, words, clock)
        .run(setup.withBench(opened), keep ? benchFile : null);
  }

  private int check(Bench read, Path benchFile) throws Exception {
    SupplyDescriptor described = SupplyDescriptorFile.read(read.supplyDescriptor());
    CameraDescriptor camera = CameraDescriptorFile.read(read.cameraDescriptor());
    if (!cameraOnly) {
      RunSetup.checkContradictions(read, described, camera);
    }
    Files.createDirectories(folder);
    terminal.say("Bench      " + read.name());
    int exitCode =
        cameraOnly
            ? ExitCode.DONE
            : new SupplyTrial(terminal, clock).run(SupplyPlace.of(read), described, folder);
    try (FrameSource source = FrameSources.open(read.cameraAddress(), camera, clock)) {
      CameraTrial trial = new CameraTrial(terminal, clock);
      boolean well = trial.run(camera, source, watchSeconds, folder);
      if (keep && trial.measuredNoise().isPresent()) {
        MeasuredCamera kept =
            KeptMeasurements.of(benchFile, camera)
                .orElse(MeasuredCamera.nothing(camera.name()))
                .with(trial.measuredNoise().get());
        terminal.say("Kept       " + KeptMeasurements.keep(kept, benchFile));
      }
      return exitCode == ExitCode.DONE && !well ? ExitCode.BAD_USE : exitCode;
    } catch (IOException e) {
      terminal.complain(e.getMessage());
      return exitCode == ExitCode.DONE ? ExitCode.BAD_USE : exitCode;
    }
  }
}
