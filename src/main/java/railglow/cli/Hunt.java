package railglow.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import railglow.camera.CameraProfile;
import railglow.camera.FrameSource;
import railglow.camera.FrameSources;
import railglow.casebook.RunFolders;
import railglow.journal.Checksums;
import railglow.journal.Findings;
import railglow.journal.FrameStoreWriter;
import railglow.journal.RunFolder;
import railglow.journal.RunHeader;
import railglow.journal.SampleType;
import railglow.live.StatusLine;
import railglow.pulse.PulseSequence;
import railglow.report.Placement;
import railglow.report.RunReport;
import railglow.run.ContactNotes;
import railglow.run.FindingsMaker;
import railglow.run.RunEnding;
import railglow.run.RunPower;
import railglow.run.RunProgress;
import railglow.run.RunResults;
import railglow.run.RunWatcher;
import railglow.run.RunWatchers;
import railglow.run.pulsed.PulsedRun;
import railglow.run.pulsed.RunParts;
import railglow.safety.StopLatch;
import railglow.thermal.inverse.PowerMap;
import railglow.time.MonotonicClock;
import railglow.time.SystemClock;
import railglow.time.WallStamp;

/** Wires a bench to a pulsed run, runs it, and writes what came of it. Used once. */
final class Hunt {
  private final Terminal terminal;
  private final Path runs;
  private final List<String> commandLine;
  private final LiveView.Options live;
  private final MonotonicClock clock = SystemClock.INSTANCE;
  private final StopLatch latch;
  private final Optional<TouchedPoint> point;
  private RunFolder folder;
  private EndRehearsal rehearsal;
  private PulsedRun.Outcome outcome;
  private Findings findings;

  Hunt(Terminal terminal, Path runs, List<String> commandLine, LiveView.Options live) {
    this(terminal, runs, commandLine, live, new StopLatch(), Optional.empty());
  }

  /** One touch of many: the caller owns signals and latch. */
  Hunt(
      Terminal terminal,
      Path runs,
      List<String> commandLine,
      LiveView.Options live,
      StopLatch latch,
      Optional<TouchedPoint> point) {
    this.terminal = terminal;
    this.latch = latch;
    this.point = point;
    this.live = live;
    this.runs = runs;
    this.commandLine = commandLine;
  }

  int run(RunSetup setup) throws Exception {
    StopSignals signals = new StopSignals(latch, clock).install();
    try {
      int exitCode = runToTheEnd(setup);
      if (outcome.header() != null) {
        CatalogueAt.take(folder, runs, terminal);
      }
      return exitCode;
    } finally {
      if (rehearsal != null) {
        rehearsal.close();
      }
      signals.runEnded();
    }
  }

  int runToTheEnd(RunSetup setup) throws Exception {
    // first of all: its own start takes as long as all that is opened besides
    try (OpenedCompanion companion = OpenedCompanion.launch(setup, latch)) {
      return guarded(setup, companion);
    }
  }

  private int guarded(RunSetup setup, OpenedCompanion companion) throws Exception {
    WallStamp now = WallStamp.now(clock);
    folder =
        new RunFolders(runs)
            .create(
                LocalDate.ofInstant(now.instant(), ZoneId.systemDefault()),
                setup.boardName(),
                setup.railName() + point.map(p -> " " + p.label()).orElse(""));
    long plannedBytes = plannedBytes(setup);
    folder.prepare(plannedBytes);
    Map<String, String> copies = UsedFiles.copy(setup.usedFiles(), setup.files(), folder);
    if (point.isEmpty()) {
      rehearsal = new EndRehearsal(folder, setup.board());
    }
    int exitCode;
    try (FrameSource source = openCamera(setup);
        OpenedSupply supply =
            OpenedSupply.open(setup.bench(), setup.supply(), folder.transcript(), clock);
        LiveView view = LiveView.start(live, setup, latch, clock, terminal)) {
      opening(setup, folder, supply);
      RunParts parts =
          new RunParts(
              folder,
              supply.supply(),
              setup.outputPlan(),
              source,
              setup.camera(),
              setup.envelope(),
              setup.timeline(),
              latch,
              clock,
              start -> {
                RunHeader header =
                    new RunHeaders(setup, folder, supply, copies, commandLine)
                        .pulsed(now, start, source);
                return rehearsal == null ? header : rehearsal.noted(header);
              },
              companion.starter(),
              plannedBytes,
              point.map(TouchedPoint::contact).orElse(ContactNotes.NONE));
      outcome = new PulsedRun(parts, view.beside(watcher())).run();
      if (rehearsal != null) {
        rehearsal.giveWay();
      }
      exitCode = finish(setup, folder, view);
    }
    Checksums.write(folder); // only now is the transcript closed
    return exitCode;
  }

  /** Of many touches the second finds everything rehearsed by the first. */
  private RunWatcher watcher() {
    RunWatcher own = new Watcher();
    return new RunWatchers(
        List.of(point.<RunWatcher>map(TouchedPoint::watcher).orElse(rehearsal), own));
  }

  /** What the frames of a run to its cap take at most. */
  static long plannedBytes(RunSetup setup) {
    CameraProfile camera = setup.camera().profile();
    double seconds = setup.timeline().endOffsetNanos() / 1e9;
    return FrameStoreWriter.plannedBytes(
        setup.camera().isFloat() ? SampleType.FLOAT32 : SampleType.UINT16,
        camera.width(),
        camera.height(),
        Math.round(seconds * camera.framesPerSecond()));
  }

  private FrameSource openCamera(RunSetup setup) throws UserMistake {
    try {
      return FrameSources.openLasting(setup.bench().cameraAddress(), setup.camera(), clock);
    } catch (IOException e) {
      throw new UserMistake(e.getMessage());
    }
  }

  private void opening(RunSetup setup, RunFolder folder, OpenedSupply supply) {
    if (point.isPresent()) {
      terminal.say("Run        " + folder.root());
      return;
    }
    PulseSequence sequence = setup.sequence();
    terminal.say(PlanText.cautions());
    terminal.say(PlanText.board(setup));
    terminal.say("Supply     " + supply.identity() + " at " + setup.bench().supplyAddress());
    terminal.say("Camera     " + setup.camera().name() + " at " + setup.bench().cameraAddress());
    terminal.say("Sequence   " + sequence.name() + ", " + PlanText.pulses(sequence));
    terminal.say("Protected  " + String.join("; ", supply.protections()));
    terminal.say(PlanText.room(setup));
    terminal.say("Run        " + folder.root());
  }

  RunFolder folder() {
    return folder;
  }

  RunEnding ending() {
    return outcome.ending();
  }

  /** Empty when the run ended before its timeline began. */
  Optional<Findings> findings() {
    return Optional.ofNullable(findings);
  }

  private int finish(RunSetup setup, RunFolder folder, LiveView view) throws IOException {
    RunEnding ending = outcome.ending();
    terminal.live("");
    warnUnlessOff(ending);
    String output = EndingText.output(ending.provenOff());
    if (point.isPresent()) {
      EndingText.sayOfTouch(terminal, ending.stop(), output);
    } else {
      EndingText.say(terminal, ending.stop(), output);
    }
    if (outcome.reduced() == null) {
      return ending.exitCode();
    }
    Optional<PowerMap> power = RunPower.map(outcome.header(), outcome.reduced(), setup.board());
    findings = FindingsMaker.make(outcome.header(), outcome.reduced(), setup.board(), power);
    view.found(ending, findings);
    try {
      RunResults.write(folder, outcome.reduced(), findings, power);
      RunReport.write(folder, Placement.of(setup.board(), setup.railName()));
      terminal.say(
          point.isPresent() ? Summary.ofTouch(findings, folder) : Summary.of(findings, folder));
    } catch (IOException e) {
      if (!EndingText.isStopped(ending.stop())) {
        throw e;
      }
      // The stop is what the operator must know, and its exit code says so.
      terminal.complain("The results can't be written: " + e.getMessage());
    }
    warnUnlessOff(ending);
    return ending.exitCode();
  }

  /** Said as soon as it is known, and again at the end, so that it does not scroll away. */
  private void warnUnlessOff(RunEnding ending) {
    if (!ending.provenOff()) {
      EndingText.notProvenOff(terminal, ending.doubt());
    }
  }

  /** Shows a live line on a terminal, and a plain line every few seconds elsewhere. */
  private final class Watcher implements RunWatcher {
    private final ProgressLine line = new ProgressLine(terminal);

    @Override
    public void onProgress(RunProgress progress) {
      line.show(StatusLine.of(progress), progress.nanos());
    }

    @Override
    public void onMessage(String sentence) {
      terminal.complain(sentence);
    }
  }
}
