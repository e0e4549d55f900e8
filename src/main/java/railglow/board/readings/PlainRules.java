package railglow.board.readings;

import railglow.board.Rail;
import railglow.board.readings.RailJudgement.Basis;
import railglow.board.readings.RailJudgement.State;
import railglow.board.readings.RailJudgement.Sureness;

/**
 * Judges a reading by what is usual when nothing else is known. Common practice of the trade, no
 * published source; every judgement says so. Pure.
 */
final class PlainRules {
  /** Rails up to this voltage feed cores and are low by nature. */
  private static final double CORE_VOLTS = 1.35;

  private static final double CORE_LEAST_OHMS = 0.5;
  private static final double LEAK_OHMS = 15;
  private static final double UNDECIDED_OHMS = 50;

  private PlainRules() {}

  static RailJudgement judge(Rail rail, RailReading reading) {
    double ohms = reading.railOhms();
    boolean core = rail.nominalVolts() <= CORE_VOLTS;
    String read = "reads " + RailJudge.ohms(ohms);
    if (ohms < RailJudge.DEAD_SHORT_OHMS) {
      return result(
          rail,
          ohms,
          State.DEAD_SHORT,
          core ? Sureness.LIKELY : Sureness.CLEAR,
          read + ": tens of milliohms are a dead short");
    }
    if (Double.isInfinite(ohms)) {
      return result(
          rail, ohms, State.HIGH, Sureness.DOUBTFUL, read + ": open, or the wrong place touched");
    }
    if (core) {
      return ohms < CORE_LEAST_OHMS
          ? result(
              rail,
              ohms,
              State.LOW,
              Sureness.DOUBTFUL,
              read + ": low even for a core rail; compare with a known-good board")
          : result(
              rail,
              ohms,
              State.NORMAL,
              Sureness.DOUBTFUL,
              read + ": a core rail is low by nature; only a known-good board can tell");
    }
    if (ohms < LEAK_OHMS) {
      return result(
          rail,
          ohms,
          State.LEAK,
          Sureness.LIKELY,
          read + ": a few ohms where tens or more are usual are a leak");
    }
    return ohms < UNDECIDED_OHMS
        ? result(
            rail,
            ohms,
            State.UNKNOWN,
            Sureness.DOUBTFUL,
            read + ": tens of ohms can be either; compare with a known-good board")
        : result(rail, ohms, State.NORMAL, Sureness.DOUBTFUL, read + ": nothing says it is wrong");
  }

  private static RailJudgement result(
      Rail rail, double ohms, State state, Sureness sureness, String reason) {
    return new RailJudgement(
        rail.name(),
        ohms,
        state,
        Basis.PLAIN_RULES,
        sureness,
        Double.NaN,
        reason + " (common practice, no source)");
  }
}
