package railglow.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
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
      "Identifies the supply, tries every word its descriptor uses with the output off, and says what"
          + " protects this bench; then watches the camera: rate, lost frames, noise, bad pixels, one"
          + " frame as a picture.",
      "The output is never switched on.",
      "With --keep the noise is kept beside the bench file: forecasts then use it."
    })
final class BenchCommand implements Callable<Integer> {
  private final Terminal terminal;
  private final MonotonicClock clock = SystemClock.INSTANCE;

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
    if (bench == null && !simulated) {
      List<String> addresses = ConnectedDevices.addresses(Path.of("/dev"));
      terminal.say(
          addresses.isEmpty()
              ? "No device file of this machine looks like an instrument."
              : "Connected  " + String.join("\n           ", addresses));
      throw new UserMistake("which bench? Give --bench FILE, or --simulated");
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
      return check(read, path);
    }
    try (SimulatedBench served =
        SimulatedBench.start(SimulateCommand.scenario("hx12", List.of()), BenchPorts.ANY, clock)) {
      return check(
          read.withAddresses(
              SimulatedBenches.supplyAddress(served), SimulatedBenches.cameraAddress(served)),
          path);
    }
  }

  private int check(Bench read, Path benchFile) throws Exception {
    SupplyDescriptor supply = SupplyDescriptorFile.read(read.supplyDescriptor());
    CameraDescriptor camera = CameraDescriptorFile.read(read.cameraDescriptor());
    if (!cameraOnly) {
      RunSetup.checkContradictions(read, supply, camera);
    }
    Files.createDirectories(folder);
    terminal.say("Bench      " + read.name());
    int exitCode =
        cameraOnly ? ExitCode.DONE : new SupplyTrial(terminal, clock).run(read, supply, folder);
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
