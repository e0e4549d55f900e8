package railglow.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Locale;
import railglow.casebook.RunFolders;
import railglow.journal.RunFolder;
import railglow.run.RunEnding;
import railglow.run.ladder.LadderPlan;
import railglow.run.ladder.LadderRun;
import railglow.safety.StopLatch;
import railglow.time.MonotonicClock;
import railglow.time.SystemClock;
import railglow.time.WallStamp;
import railglow.units.Quantity;
import railglow.units.Unit;

/** Wires a bench's supply to a ladder, runs it, and keeps its steps. Used once. */
final class LadderAtBench {
  private final Terminal terminal;
  private final Path runs;
  private final int levels;
  private final double dwellSeconds;
  private final MonotonicClock clock = SystemClock.INSTANCE;
  private final StopLatch latch = new StopLatch();

  LadderAtBench(Terminal terminal, Path runs, int levels, double dwellSeconds) {
    this.terminal = terminal;
    this.runs = runs;
    this.levels = levels;
    this.dwellSeconds = dwellSeconds;
  }

  int run(RunSetup setup) throws Exception {
    StopSignals signals = new StopSignals(latch, clock).install();
    try {
      return climb(setup);
    } finally {
      signals.runEnded();
    }
  }

  private int climb(RunSetup setup) throws Exception {
    WallStamp now = WallStamp.now(clock);
    RunFolder folder =
        new RunFolders(runs.resolve("ladders"))
            .create(
                LocalDate.ofInstant(now.instant(), ZoneId.systemDefault()),
                setup.boardName(),
                setup.railName());
    LadderPlan plan = LadderPlan.upTo(setup.outputPlan().highestVolts(), levels, dwellSeconds);
    try (OpenedCompanion companion = OpenedCompanion.launch(setup, latch);
        OpenedSupply supply =
            OpenedSupply.open(setup.bench(), setup.supply(), folder.transcript(), clock)) {
      terminal.say(PlanText.cautions());
      terminal.say("Board      " + PlanText.board(setup));
      terminal.say("Supply     " + supply.identity() + " at " + setup.bench().supplyAddress());
      terminal.say(
          String.format(
              Locale.ROOT,
              "Ladder     %d levels up to %s, limit %s, %.1f s; no camera watches",
              levels,
              Quantity.format(plan.highestVolts(), Unit.VOLT),
              Quantity.format(setup.outputPlan().limitAmperes(), Unit.AMPERE),
              plan.seconds()));
      LadderRun.Outcome outcome =
          new LadderRun(
                  supply.supply(),
                  setup.outputPlan(),
                  setup.envelope(),
                  plan,
                  setup.bench().sensedAtBoard() ? 0 : setup.bench().leadOhms(),
                  latch,
                  clock,
                  companion.starter())
              .run();
      return finish(folder, outcome);
    }
  }

  private int finish(RunFolder folder, LadderRun.Outcome outcome) throws Exception {
    RunEnding ending = outcome.ending();
    if (!ending.provenOff()) {
      terminal.complain("OUTPUT NOT PROVEN OFF: " + ending.doubt());
      terminal.complain("Switch the supply off by hand, or pull the leads, NOW.");
    }
    terminal.say("");
    Summary.sentence(
        terminal,
        "Ended      ",
        ending.stop().evidence()
            + (ending.provenOff() ? "; output proven off" : "; OUTPUT NOT PROVEN OFF"));
    terminal.say("");
    terminal.say(LadderText.of(outcome.steps()));
    Path table = folder.root().resolve("steps.csv");
    Files.writeString(table, LadderText.csv(outcome.steps()));
    terminal.say("Kept       " + table);
    return ending.exitCode();
  }
}
