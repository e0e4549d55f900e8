package railglow.board.readings;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import railglow.board.Rail;
import railglow.board.readings.RailJudgement.Basis;
import railglow.board.readings.RailJudgement.State;
import railglow.board.readings.RailJudgement.Sureness;
import railglow.units.Interval;
import railglow.units.Quantity;
import railglow.units.Unit;

/**
 * Judges the readings of one rail: against a known-good board where there is one, else the board
 * file's normal range, else plain rules. Pure.
 */
final class RailJudge {
  /** Readings of one rail that differ by more than this depend on polarity or level. */
  private static final double SAME_PATH = 1.5;

  private static final double SIGMAS = 3;
  private static final double CLEAR_FACTOR = 2;

  /** Below this the fault is a dead short whatever the rail; common practice, no source. */
  static final double DEAD_SHORT_OHMS = 0.1;

  private RailJudge() {}

  static RailJudgement judge(Rail rail, List<RailReading> readings, Optional<KnownGood> good) {
    Optional<RailReading> forward = forward(readings);
    if (forward.isEmpty()) {
      return new RailJudgement(
          rail.name(),
          Double.NaN,
          State.UNKNOWN,
          Basis.NOTHING,
          Sureness.DOUBTFUL,
          Double.NaN,
          "no reading was given");
    }
    RailReading reading = forward.get();
    Optional<RailJudgement> semiconductor = semiconductor(rail, readings);
    if (semiconductor.isPresent()) {
      return semiconductor.get();
    }
    Optional<Interval> byGood = good.flatMap(known -> known.normal(rail.name()));
    if (byGood.isPresent()) {
      return against(rail, reading, byGood.get(), Basis.KNOWN_GOOD);
    }
    return rail.normalOhms()
        .map(normal -> against(rail, reading, normal, Basis.NORMAL_RANGE))
        .orElseGet(() -> PlainRules.judge(rail, reading));
  }

  /** The reading that counts: the lowest of those not taken the wrong way round. */
  private static Optional<RailReading> forward(List<RailReading> readings) {
    return readings.stream()
        .filter(reading -> reading.polarity() != RailReading.Polarity.NEGATIVE)
        .min(java.util.Comparator.comparingDouble(RailReading::railOhms))
        .or(() -> readings.stream().findFirst());
  }

  private static Optional<RailJudgement> semiconductor(Rail rail, List<RailReading> readings) {
    double least = Double.POSITIVE_INFINITY;
    double most = 0;
    double sigma = 0;
    for (RailReading reading : readings) {
      least = Math.min(least, reading.railOhms());
      most = Math.max(most, reading.railOhms());
      sigma = Math.max(sigma, reading.sigmaOhms());
    }
    boolean comparable =
        readings.stream().map(RailReading::polarity).distinct().count() > 1
            || readings.stream().mapToDouble(RailReading::testVolts).distinct().count() > 1;
    if (readings.size() < 2
        || !comparable
        || most < SAME_PATH * least
        || most - least < SIGMAS * sigma
        || least < DEAD_SHORT_OHMS) {
      return Optional.empty();
    }
    return Optional.of(
        new RailJudgement(
            rail.name(),
            forward(readings).orElseThrow().railOhms(),
            State.SEMICONDUCTOR,
            Basis.NOTHING,
            Sureness.LIKELY,
            Double.NaN,
            "it reads "
                + ohms(least)
                + " one way and "
                + ohms(most)
                + " another (polarity or level): a semiconductor path, not a plain leak; step it"
                + " up with 'ladder' before judging it"));
  }

  private static RailJudgement against(
      Rail rail, RailReading reading, Interval normal, Basis basis) {
    double value = reading.railOhms();
    double share = value / normal.low();
    double below = (normal.low() - value) / reading.sigmaOhms();
    String compared = " where " + range(normal) + " is normal by " + basis.words();
    if (value < normal.low()) {
      Sureness sureness =
          below < SIGMAS
              ? Sureness.DOUBTFUL
              : value * CLEAR_FACTOR <= normal.low() ? Sureness.CLEAR : Sureness.LIKELY;
      State state =
          below < SIGMAS ? State.LOW : value < DEAD_SHORT_OHMS ? State.DEAD_SHORT : State.LEAK;
      return new RailJudgement(
          rail.name(), value, state, basis, sureness, share, "reads " + ohms(value) + compared);
    }
    if (value > normal.high()) {
      double above = (value - normal.high()) / reading.sigmaOhms();
      return new RailJudgement(
          rail.name(),
          value,
          State.HIGH,
          basis,
          Double.isNaN(above) || above > SIGMAS && value > CLEAR_FACTOR * normal.high()
              ? Sureness.LIKELY
              : Sureness.DOUBTFUL,
          share,
          "reads " + ohms(value) + compared + ": something is open or missing, not shorted");
    }
    return new RailJudgement(
        rail.name(),
        value,
        State.NORMAL,
        basis,
        below > -SIGMAS && normal.low() > 0 ? Sureness.LIKELY : Sureness.CLEAR,
        share,
        "reads " + ohms(value) + compared);
  }

  static String ohms(double value) {
    return Double.isInfinite(value) ? "open" : Quantity.format(value, Unit.OHM);
  }

  private static String range(Interval normal) {
    return Double.isInfinite(normal.high())
        ? String.format(Locale.ROOT, "%s or more", ohms(normal.low()))
        : ohms(normal.low()) + " to " + ohms(normal.high());
  }
}
