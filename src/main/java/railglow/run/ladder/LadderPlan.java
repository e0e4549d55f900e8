package railglow.run.ladder;

import java.util.ArrayList;
import java.util.List;

/**
 * The levels of a ladder and how long each is held.
 *
 * @param levelsVolts rising, at the supply
 * @param settleSeconds readings before this are left out at each level
 * @param dwellSeconds how long each level is held, above the settling
 */
public record LadderPlan(List<Double> levelsVolts, double settleSeconds, double dwellSeconds) {
  private static final double FIRST_SHARE = 0.03;
  private static final double SETTLE_SHARE = 0.4;
  private static final double LEAST_VOLTS = 0.02;

  public LadderPlan {
    levelsVolts = List.copyOf(levelsVolts);
    double before = 0;
    for (double level : levelsVolts) {
      if (!(level > before) || Double.isInfinite(level)) {
        throw new IllegalArgumentException("the levels of a ladder must rise from above 0 V");
      }
      before = level;
    }
    if (levelsVolts.isEmpty() || !(settleSeconds >= 0) || !(dwellSeconds > settleSeconds)) {
      throw new IllegalArgumentException("a ladder needs levels, and time beyond the settling");
    }
  }

  /**
   * Levels from almost nothing to a highest, closer together at the lower end, each above 0.1 mV.
   */
  public static LadderPlan upTo(double highestVolts, int steps, double dwellSeconds) {
    List<Double> levels = new ArrayList<>();
    double first = Math.min(highestVolts / 2, Math.max(LEAST_VOLTS, FIRST_SHARE * highestVolts));
    for (int i = 0; i < steps; i++) {
      double share = i / (double) Math.max(1, steps - 1);
      double level = first + (highestVolts - first) * Math.pow(share, 1.5);
      levels.add(i == steps - 1 ? highestVolts : Math.round(level * 1e4) / 1e4);
    }
    return new LadderPlan(levels, settleSeconds(dwellSeconds), dwellSeconds);
  }

  /** How much of the time a level is held is left to settle. */
  static double settleSeconds(double dwellSeconds) {
    return SETTLE_SHARE * dwellSeconds;
  }

  public double highestVolts() {
    return levelsVolts.get(levelsVolts.size() - 1);
  }

  public double seconds() {
    return levelsVolts.size() * dwellSeconds;
  }
}
