package railglow.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import railglow.camera.FrameSource;
import railglow.camera.FrameSources;
import railglow.casebook.RunFolders;
import railglow.journal.Checksums;
import railglow.journal.RunFolder;
import railglow.run.RunEnding;
import railglow.run.RunProgress;
import railglow.run.RunWatcher;
import railglow.run.ladder.LadderParts;
import railglow.run.ladder.LadderPlan;
import railglow.run.ladder.LadderRun;
import railglow.run.ladder.ReadBack;
import railglow.run.ladder.WatchedCamera;
import railglow.safety.StopLatch;
import railglow.time.MonotonicClock;
import railglow.time.SystemClock;
import railglow.time.WallStamp;
import railglow.units.Quantity;
import railglow.units.Unit;

/** Wires a bench's supply to a ladder, runs it, and keeps its record. Used once. */
final class LadderAtBench {
  private final Terminal terminal;
  private final Path runs;
  private final boolean watched;
  private final List<String> commandLine;
  private final MonotonicClock clock = SystemClock.INSTANCE;
  private final StopLatch latch = new StopLatch();
  private RunFolder folder;

  /**
   * @param runs where the folder of this ladder is made
   * @param watched whether the bench's camera guards the board
   */
  LadderAtBench(Terminal terminal, Path runs, boolean watched, List<String> commandLine) {
    this.terminal = terminal;
    this.runs = runs;
    this.watched = watched;
    this.commandLine = commandLine;
  }

  RunFolder folder() {
    return folder;
  }

  /**
   * @param what it is for the operator, for example "Ladder"
   */
  LadderRun.Outcome run(RunSetup setup, LadderPlan plan, String what) throws Exception {
    StopSignals signals = new StopSignals(latch, clock).install();
    try {
      return climb(setup, plan, what);
    } finally {
      signals.runEnded();
    }
  }

  private LadderRun.Outcome climb(RunSetup setup, LadderPlan plan, String what) throws Exception {
    WallStamp now = WallStamp.now(clock);
    folder =
        new RunFolders(runs)
            .create(
                LocalDate.ofInstant(now.instant(), ZoneId.systemDefault()),
                setup.boardName(),
                setup.railName());
    Map<String, String> copies = UsedFiles.copy(setup.usedFiles(), setup.files(), folder);
    LadderRun.Outcome outcome;
    try (OpenedCompanion companion = OpenedCompanion.launch(setup, latch);
        FrameSource source = watched ? openCamera(setup) : null;
        OpenedSupply supply =
            OpenedSupply.open(setup.bench(), setup.supply(), folder.transcript(), clock)) {
      opening(setup, plan, what, supply);
      outcome =
          new LadderRun(
                  new LadderParts(
                      folder,
                      supply.supply(),
                      setup.outputPlan(),
                      setup.envelope(),
                      plan,
                      setup.bench().sensedAtBoard() ? 0 : setup.bench().leadOhms(),
                      readBack(setup),
                      latch,
                      clock,
                      start ->
                          new RunHeaders(setup, folder, supply, copies, commandLine)
                              .ladder(now, start, plan),
                      companion.starter(),
                      Optional.ofNullable(source).map(s -> new WatchedCamera(s, setup.camera()))),
                  new Watcher())
              .run();
      Files.writeString(steps(), LadderText.csv(outcome.steps()));
    }
    Checksums.write(folder); // only now is the transcript closed
    ended(outcome);
    return outcome;
  }

  static ReadBack readBack(RunSetup setup) {
    return ReadBack.of(setup.supply().channel(setup.bench().supplyChannel()));
  }

  /** The table of steps that is kept. */
  Path steps() {
    return folder.root().resolve("steps.csv");
  }

  private FrameSource openCamera(RunSetup setup) throws UserMistake {
    try {
      return FrameSources.open(setup.bench().cameraAddress(), setup.camera(), clock);
    } catch (IOException e) {
      throw new UserMistake(
          e.getMessage() + "; --without-camera steps without its guard against heat");
    }
  }

  private void opening(RunSetup setup, LadderPlan plan, String what, OpenedSupply supply) {
    terminal.say(PlanText.cautions());
    terminal.say(PlanText.board(setup));
    terminal.say("Supply     " + supply.identity() + " at " + setup.bench().supplyAddress());
    terminal.say(
        String.format(
            Locale.ROOT,
            "%-10s %d levels up to %s, limit %s, %.1f s; %s",
            what,
            plan.levelsVolts().size(),
            Quantity.format(plan.highestVolts(), Unit.VOLT),
            Quantity.format(setup.outputPlan().limitAmperes(), Unit.AMPERE),
            plan.seconds(),
            watched
                ? "the camera guards against heat above "
                    + Quantity.format(setup.envelope().maxCelsius().value(), Unit.CELSIUS)
                : "no camera watches"));
  }

  private void ended(LadderRun.Outcome outcome) {
    RunEnding ending = outcome.ending();
    if (!ending.provenOff()) {
      EndingText.notProvenOff(terminal, ending.doubt());
    }
    if (!outcome.recordFailure().isEmpty()) {
      terminal.complain("The record is not whole: " + outcome.recordFailure());
    }
    terminal.say("");
    Summary.sentence(
        terminal, "Ended      ", ending.stop().evidence() + EndingText.output(ending.provenOff()));
  }

  /** Only what the operator must read; a ladder is over before progress matters. */
  private final class Watcher implements RunWatcher {
    @Override
    public void onProgress(RunProgress progress) {}

    @Override
    public void onMessage(String sentence) {
      terminal.complain(sentence);
    }
  }
}
