package railglow.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import railglow.camera.FrameSource;
import railglow.camera.FrameSources;
import railglow.casebook.RunFolders;
import railglow.journal.Checksums;
import railglow.journal.Journal;
import railglow.journal.JournalReader;
import railglow.journal.NpyFile;
import railglow.journal.RunFolder;
import railglow.report.Placement;
import railglow.report.RunReport;
import railglow.run.logging.LogEnding;
import railglow.run.logging.LogParts;
import railglow.run.logging.LogProgress;
import railglow.run.logging.LogWatcher;
import railglow.run.logging.LoggingRun;
import railglow.safety.StopCause;
import railglow.safety.StopLatch;
import railglow.time.MonotonicClock;
import railglow.time.SystemClock;
import railglow.time.WallStamp;

/** Wires a bench to a log, runs it, and writes what came of it. Used once. */
final class LogAtBench {
  private final Terminal terminal;
  private final LogOptions options;
  private final List<String> commandLine;
  private final MonotonicClock clock = SystemClock.INSTANCE;
  private final StopLatch latch = new StopLatch();
  private final AtomicInteger pressed = new AtomicInteger();

  LogAtBench(Terminal terminal, LogOptions options, List<String> commandLine) {
    this.terminal = terminal;
    this.options = options;
    this.commandLine = commandLine;
  }

  int run(LogSetup setup) throws Exception {
    StopSignals signals = new StopSignals(latch, clock).install();
    WallStamp now = WallStamp.now(clock);
    RunFolder folder =
        new RunFolders(options.runs)
            .create(
                LocalDate.ofInstant(now.instant(), ZoneId.systemDefault()),
                setup.run().boardName(),
                (setup.run().railName() + " log").strip());
    try {
      folder.prepare(setup.plannedBytes());
      LoggingRun.Outcome outcome = log(setup, folder, now);
      int exitCode = finish(folder, outcome);
      if (outcome.header() != null) {
        Checksums.write(folder); // only now is the transcript closed
        CatalogueAt.take(folder, options.runs, terminal);
      }
      return exitCode;
    } finally {
      signals.runEnded();
    }
  }

  private LoggingRun.Outcome log(LogSetup setup, RunFolder folder, WallStamp now) throws Exception {
    Map<String, String> copies =
        UsedFiles.copy(setup.run().usedFiles(), setup.run().files(), folder);
    try (OpenedCompanion companion =
            setup.plan().injects() ? OpenedCompanion.launch(setup.run(), latch) : null;
        FrameSource source = openCamera(setup);
        OpenedSupply supply = openSupply(setup, folder)) {
      opening(setup, folder, supply);
      boolean injects = setup.plan().injects();
      LogParts parts =
          new LogParts(
              folder,
              setup.plan(),
              injects
                  ? Optional.of(
                      new LogParts.Driven(
                          supply.supply(), setup.run().outputPlan(), companion.starter()))
                  : Optional.empty(),
              supply == null || injects ? Optional.empty() : Optional.of(supply.watched()),
              source,
              setup.run().camera(),
              setup.envelope(),
              latch,
              clock,
              start ->
                  new RunHeaders(setup.run(), folder, supply, copies, commandLine)
                      .log(now, start, setup),
              setup.plannedBytes());
      LoggingRun logging = new LoggingRun(parts, new Watcher());
      Keys.lines(terminal.typed(), line -> mark(logging, line), this::quit);
      return logging.run();
    }
  }

  private void mark(LoggingRun logging, String line) {
    String text = line.isEmpty() ? "mark " + pressed.incrementAndGet() : line;
    terminal.say(
        logging.mark(text)
            ? "Mark       " + text
            : "Nothing is recorded yet, so '" + text + "' is not marked.");
  }

  private void quit() {
    latch.set(StopCause.PROGRAMME_FINISHED, clock.nanos(), "ended by the operator with q");
  }

  private FrameSource openCamera(LogSetup setup) throws UserMistake {
    try {
      return FrameSources.open(setup.run().bench().cameraAddress(), setup.run().camera(), clock);
    } catch (IOException e) {
      throw new UserMistake(e.getMessage());
    }
  }

  /** Null when only the camera is used. */
  private OpenedSupply openSupply(LogSetup setup, RunFolder folder) throws UserMistake {
    Path transcript = folder.transcript();
    if (setup.plan().injects()) {
      return OpenedSupply.open(setup.run().bench(), setup.run().supply(), transcript, clock);
    }
    return options.watchSupply
        ? OpenedSupply.watch(setup.run().bench(), setup.run().supply(), transcript, clock)
        : null;
  }

  private void opening(LogSetup setup, RunFolder folder, OpenedSupply supply) {
    terminal.say(PlanText.cautions());
    terminal.say(PlanText.board(setup.run()));
    terminal.say(
        supply == null
            ? "Supply     none: only the camera is used"
            : "Supply     "
                + supply.identity()
                + " at "
                + setup.run().bench().supplyAddress()
                + (setup.plan().injects() ? "" : ", read only; this program can't switch it off"));
    terminal.say(
        "Camera     " + setup.run().camera().name() + " at " + setup.run().bench().cameraAddress());
    Summary.sentence(terminal, "Log        ", LogText.plan(setup));
    if (!setup.plan().places().isEmpty()) {
      terminal.say(
          "Places     "
              + String.join(
                  ", ", setup.plan().places().stream().map(place -> place.name()).toList()));
    }
    terminal.say("Room       " + LogText.room(setup));
    if (setup.plan().injects()) {
      Summary.sentence(terminal, "Protected  ", String.join("; ", supply.protections()));
    }
    terminal.say("Keys       Enter sets a mark, text and Enter a named one, q and Enter ends");
    terminal.say("Run        " + folder.root());
  }

  private int finish(RunFolder folder, LoggingRun.Outcome outcome) throws IOException {
    LogEnding ending = outcome.ending();
    terminal.live("");
    warnUnlessOff(ending);
    EndingText.say(
        terminal,
        ending.stop(),
        ending.output() == null ? "" : EndingText.output(!ending.outputInDoubt()));
    if (outcome.header() == null) {
      return ending.exitCode();
    }
    try {
      Files.createDirectories(folder.planes());
      if (outcome.baseline() != null) {
        NpyFile.write(folder.plane("background"), outcome.baseline());
      }
      Journal journal = JournalReader.read(folder);
      RunReport.write(
          folder,
          Placement.of(
              RunFolderOf.boardOrNull(folder, journal.header(), terminal),
              journal.header().rail()));
      terminal.say(LogSummary.of(folder, journal, outcome));
    } catch (IOException e) {
      // The stop is what the operator must know, and its exit code says so.
      terminal.complain("The report can't be written: " + e.getMessage());
    }
    warnUnlessOff(ending);
    return ending.exitCode();
  }

  private void warnUnlessOff(LogEnding ending) {
    if (ending.outputInDoubt()) {
      EndingText.notProvenOff(terminal, ending.doubt());
    }
  }

  /** Shows a live line on a terminal, and a plain line every few seconds elsewhere. */
  private final class Watcher implements LogWatcher {
    private final ProgressLine line = new ProgressLine(terminal);

    @Override
    public void onLog(LogProgress progress) {
      line.show(LogText.line(progress), progress.nanos());
    }

    @Override
    public void onMessage(String sentence) {
      terminal.complain(sentence);
    }
  }
}
