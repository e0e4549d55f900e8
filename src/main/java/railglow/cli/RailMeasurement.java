package railglow.cli;

import java.util.List;
import railglow.board.ladder.LadderStep;
import railglow.board.readings.MeasuredRail;
import railglow.board.readings.MeasuringLeads;
import railglow.board.readings.MeterErrors;
import railglow.config.Bench;
import railglow.config.ConfigException;
import railglow.run.ladder.LadderPlan;
import railglow.run.ladder.LadderRun;
import railglow.safety.EnvelopeCheck;
import railglow.sim.BenchPorts;
import railglow.sim.SimulatedBench;
import railglow.supply.ChannelAbility;
import railglow.time.SystemClock;
import railglow.units.Quantity;
import railglow.units.Unit;

/**
 * Reads one rail with the bench's supply: a ladder of a few gentle levels under all limits of a
 * run, keeper, permits, guard and companion included.
 */
final class RailMeasurement {
  /** Enough for a junction to conduct, so that it is not taken for a leak. */
  private static final double USUAL_VOLTS = 0.6;

  /** With the leads swapped: below what makes a chip's protection diodes conduct. */
  private static final double SWAPPED_VOLTS = 0.3;

  private static final double USUAL_AMPERES = 0.1;
  private static final int LEVELS = 8;
  private static final double DWELL_SECONDS = 0.5;

  /**
   * How it ended.
   *
   * @param measured null when it was stopped
   */
  record Outcome(int exitCode, MeasuredRail measured) {}

  private final Terminal terminal;
  private final MeasureOptions options;
  private final RunOptions run = new RunOptions();

  RailMeasurement(Terminal terminal, MeasureOptions options, String boardName, String benchName) {
    this.terminal = terminal;
    this.options = options;
    run.board = boardName;
    run.bench = benchName;
    run.simulated = options.simulated;
    run.rail = options.rail;
  }

  Outcome read(List<String> commandLine) throws Exception {
    RunSetup setup = gentle();
    if (!setup.refusals().isEmpty()) {
      PlanText.refusals(setup.refusals()).forEach(terminal::complain);
      return new Outcome(ExitCode.REFUSED, null);
    }
    if (!options.simulated) {
      return read(setup, commandLine);
    }
    try (SimulatedBench bench =
        SimulatedBench.start(options.board.scenario(), BenchPorts.ANY, SystemClock.INSTANCE)) {
      return read(SimulatedBenches.joined(setup, bench), commandLine);
    }
  }

  /**
   * The usual gentle level where it is allowed, else what is; what was asked for is not changed.
   */
  private RunSetup gentle() throws UserMistake, ConfigException {
    double most = options.reversed ? SWAPPED_VOLTS : USUAL_VOLTS;
    if (options.reversed && options.levelVolts != null && options.levelVolts > most) {
      throw new UserMistake(
          "--level is "
              + Quantity.format(options.levelVolts, Unit.VOLT)
              + "; with --reversed at most "
              + Quantity.format(most, Unit.VOLT)
              + " is allowed: a chip's protection diodes would conduct");
    }
    run.levelVolts = options.levelVolts == null ? most : options.levelVolts;
    run.currentLimitAmperes = options.limitAmperes == null ? USUAL_AMPERES : options.limitAmperes;
    double watts = run.levelVolts * run.currentLimitAmperes;
    if (!(watts <= EnvelopeCheck.ENERGETIC_ABOVE_WATTS)) {
      throw new UserMistake(
          "a reading is gentle: level times current limit is "
              + Quantity.format(watts, Unit.WATT)
              + ", at most "
              + Quantity.format(EnvelopeCheck.ENERGETIC_ABOVE_WATTS, Unit.WATT)
              + " is allowed; for more use 'ladder'");
    }
    RunSetup setup = RunSetup.of(run);
    if (options.levelVolts == null) {
      run.levelVolts = Math.min(run.levelVolts, setup.envelope().maxVolts().value());
    }
    if (options.limitAmperes == null) {
      run.currentLimitAmperes =
          Math.min(run.currentLimitAmperes, setup.envelope().maxAmperes().value());
    }
    return RunSetup.of(run);
  }

  private Outcome read(RunSetup setup, List<String> commandLine) throws Exception {
    LadderAtBench ladder =
        new LadderAtBench(terminal, options.runs.resolve("readings"), false, commandLine);
    LadderPlan plan = LadderPlan.upTo(setup.outputPlan().highestVolts(), LEVELS, DWELL_SECONDS);
    LadderRun.Outcome outcome = ladder.run(setup, plan, "Reading");
    int exitCode = outcome.ending().exitCode();
    if (exitCode != ExitCode.DONE) {
      Summary.sentence(terminal, "Measured   ", "nothing: it was stopped before it was done.");
      return new Outcome(exitCode, null);
    }
    MeasuredRail measured = measured(setup, outcome.steps(), options.reversed);
    Summary.sentence(terminal, "Measured   ", measured.sentence());
    terminal.say("Record     " + ladder.folder().root());
    terminal.say("");
    return new Outcome(exitCode, measured);
  }

  /** What steps say of the rail, with the errors of this bench's meters and leads. */
  static MeasuredRail measured(RunSetup setup, List<LadderStep> steps, boolean reversed) {
    String rail = setup.railName().isEmpty() ? "the rail" : setup.railName();
    return MeasuredRail.of(rail, steps, leads(setup.bench()), meters(setup), reversed);
  }

  private static MeasuringLeads leads(Bench bench) {
    return bench.sensedAtBoard()
        ? MeasuringLeads.SENSED_AT_BOARD
        : new MeasuringLeads(bench.leadOhms(), bench.leadErrorOhms());
  }

  private static MeterErrors meters(RunSetup setup) {
    ChannelAbility channel = setup.supply().channel(setup.bench().supplyChannel());
    return new MeterErrors(
        channel.voltsError().absolute(),
        channel.voltsError().relative(),
        channel.amperesError().absolute(),
        channel.amperesError().relative());
  }
}
