package railglow.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import railglow.board.Board;
import railglow.camera.CountScale;
import railglow.camera.Orientation;
import railglow.camera.RawFileFrames;
import railglow.camera.RecordedFrames;
import railglow.camera.TiffFrames;
import railglow.casebook.RunFolders;
import railglow.config.BoardFile;
import railglow.config.LoadedBoard;
import railglow.journal.CameraFacts;
import railglow.journal.Checksums;
import railglow.journal.EdgeTable;
import railglow.journal.Findings;
import railglow.journal.FrameTable;
import railglow.journal.RunFolder;
import railglow.journal.RunHeader;
import railglow.journal.SampleType;
import railglow.pulse.CycleWindow;
import railglow.pulse.CyclesFromEdges;
import railglow.pulse.PulseSequence;
import railglow.report.Placement;
import railglow.report.RunReport;
import railglow.run.FindingsMaker;
import railglow.run.ImportedRun;
import railglow.run.Replay;
import railglow.run.RunPower;
import railglow.run.RunResults;
import railglow.safety.Envelope;
import railglow.thermal.CountSamples;
import railglow.thermal.DetectionSettings;
import railglow.thermal.Samples;
import railglow.thermal.inverse.PowerMap;
import railglow.time.SystemClock;
import railglow.time.WallStamp;

/** Makes a run folder of frames recorded elsewhere and a table of pulses, and evaluates it. */
@Command(
    name = "import",
    mixinStandardHelpOptions = true,
    description = {
      "Makes a run folder of frames recorded elsewhere and a table of edges, and evaluates it like a"
          + " run of one's own.",
      "Frames: NPY (frames x rows x columns, uint16 or float32) or a multi-page TIFF. Edges: CSV with"
          + " columns time_s and state (ON or OFF). Frame times: CSV with columns frame and t_ms."
    })
final class ImportCommand implements Callable<Integer> {
  private final Terminal terminal;
  @Spec private CommandSpec spec;

  @Option(names = "--frames", required = true, paramLabel = "FILE", description = "NPY or TIFF")
  private Path frames;

  @Option(
      names = "--edges",
      required = true,
      paramLabel = "CSV",
      description = "when the output was switched, on the clock of the frame times")
  private Path edges;

  @Option(
      names = "--times",
      paramLabel = "CSV",
      description = "when each frame was taken; without it the frame rate is taken as steady")
  private Path times;

  @Option(
      names = "--frame-rate",
      paramLabel = "HERTZ",
      converter = Quantities.Hertz.class,
      description = "e.g. \"8.8 Hz\"; without it the rate follows from --times")
  private Double framesPerSecond;

  @Option(
      names = "--kelvin-per-count",
      paramLabel = "KELVIN",
      converter = Quantities.Kelvin.class,
      description = "e.g. \"20 mK\"; without it rises are given in counts")
  private Double kelvinPerCount;

  @Option(
      names = "--celsius-at-zero",
      paramLabel = "CELSIUS",
      converter = Quantities.Celsius.class,
      description =
          "temperature of a count of zero, e.g. \"-273.15 degC\"; without it only rises are known")
  private Double celsiusAtZero;

  @Option(
      names = "--camera-time-constant",
      paramLabel = "SECONDS",
      converter = Quantities.Seconds.class,
      description = "lag of the detector and the camera's own smoothing (default: 10 ms)")
  private double timeConstantSeconds = 0.01;

  @Option(names = "--board", paramLabel = "FILE", description = "board file, for the suspects")
  private String board;

  @Option(names = "--rail", paramLabel = "NAME", description = "the rail that was injected")
  private String rail = "";

  @Option(
      names = "--runs",
      paramLabel = "FOLDER",
      description = "where the run folder is made (default: runs)")
  private Path runs = Path.of("runs");

  @Mixin private EnteredOptions entered = new EnteredOptions();

  ImportCommand(Terminal terminal) {
    this.terminal = terminal;
  }

  @Override
  public Integer call() throws Exception {
    if (celsiusAtZero != null && kelvinPerCount == null) {
      throw new UserMistake("--celsius-at-zero needs --kelvin-per-count beside it");
    }
    LoadedBoard files =
        entered.on(
            board == null
                ? null
                : BoardFile.read(ShippedFiles.find(board, "examples", "board file")));
    Board loaded = files == null ? null : files.board();
    try (RecordedFrames recorded = open()) {
      List<CycleWindow> cycles = cycles();
      long[] nanos = times(recorded.count());
      WallStamp now = WallStamp.now(SystemClock.INSTANCE);
      RunFolder folder =
          new RunFolders(runs)
              .create(
                  LocalDate.ofInstant(now.instant(), ZoneOffset.systemDefault()),
                  loaded == null ? "imported" : loaded.name(),
                  rail);
      RunHeader header =
          header(
              folder,
              now,
              recorded,
              cycles,
              nanos,
              loaded,
              UsedFiles.copy(Map.of(), files, folder));
      Progress progress = new Progress(terminal, "frames imported");
      ImportedRun.write(folder, header, recorded, nanos, progress::at);
      Replay.Result result = Replay.of(folder, progress::at);
      progress.end();
      Optional<PowerMap> power = RunPower.map(header, result.reduced(), loaded);
      Findings findings = FindingsMaker.make(header, result.reduced(), loaded, power);
      RunResults.write(folder, result.reduced(), findings, power);
      Checksums.write(folder);
      RunReport.write(folder, Placement.of(loaded, rail));
      terminal.say(Summary.of(findings, folder));
      return ExitCode.DONE;
    }
  }

  private RecordedFrames open() throws IOException, UserMistake {
    String name = frames.getFileName().toString().toLowerCase(java.util.Locale.ROOT);
    if (name.endsWith(".npy")) {
      return RawFileFrames.openNpy(frames, Orientation.AS_STORED, CountScale.unknown());
    }
    if (name.endsWith(".tif") || name.endsWith(".tiff")) {
      return TiffFrames.open(frames, Orientation.AS_STORED);
    }
    throw new UserMistake(frames + ": the name must end in .npy, .tif or .tiff");
  }

  private List<CycleWindow> cycles() throws IOException, UserMistake {
    try {
      return ImportedRun.cycles(EdgeTable.read(edges));
    } catch (IllegalArgumentException e) {
      throw new UserMistake(edges + ": " + e.getMessage());
    }
  }

  private long[] times(int count) throws IOException, UserMistake {
    if (times == null && framesPerSecond == null) {
      throw new UserMistake("give --times FILE or --frame-rate, so that frames can be timed");
    }
    if (times == null) {
      long[] steady = new long[count];
      for (int i = 0; i < count; i++) {
        steady[i] = Math.round(i * 1e9 / framesPerSecond);
      }
      return steady;
    }
    long[] nanos = FrameTable.readNanos(times);
    if (nanos.length != count) {
      throw new UserMistake(
          times + " times " + nanos.length + " frames, but " + frames + " holds " + count);
    }
    if (count < 2) {
      throw new UserMistake(frames + " holds " + count + " frames; too few for anything");
    }
    return nanos;
  }

  private static double orUnknown(Double given) {
    return given == null ? Double.NaN : given;
  }

  private RunHeader header(
      RunFolder folder,
      WallStamp now,
      RecordedFrames recorded,
      List<CycleWindow> cycles,
      long[] nanos,
      Board loaded,
      Map<String, String> copies) {
    double rate =
        framesPerSecond != null
            ? framesPerSecond
            : 1e9 * (nanos.length - 1) / (nanos[nanos.length - 1] - nanos[0]);
    double period = CyclesFromEdges.periodSeconds(cycles);
    Samples like = recorded.newSamples();
    int most = Math.max(2, cycles.size());
    DetectionSettings detection =
        DetectionSettings.usual(period, timeConstantSeconds, 0.05, 2, most);
    PulseSequence sequence =
        new PulseSequence(
            "imported",
            "Pulses made elsewhere.",
            0,
            0,
            period,
            2,
            most,
            false,
            0,
            0,
            detection.familyWiseError(),
            Double.POSITIVE_INFINITY,
            Double.POSITIVE_INFINITY);
    return new RunHeader(
        RunHeader.CURRENT_FORMAT,
        VersionProvider.version(),
        now.instant(),
        0,
        folder.name(),
        loaded == null ? "" : loaded.name(),
        rail,
        sequence,
        Envelope.OPEN,
        new CameraFacts(
            "recorded: " + frames.getFileName(),
            like.width(),
            like.height(),
            SampleType.of(like).word(),
            rate,
            orUnknown(kelvinPerCount),
            orUnknown(celsiusAtZero),
            Double.NaN,
            0,
            timeConstantSeconds,
            true,
            true,
            2,
            like instanceof CountSamples ? 0xFFFF : Double.POSITIVE_INFINITY),
        "",
        0,
        List.of(),
        detection,
        cycles,
        copies,
        spec.commandLine().getParseResult().originalArgs());
  }
}
