package railglow.sim.circuit;

import java.util.List;
import java.util.Optional;

/**
 * One path from the rail to ground: resistances in series, perhaps with a junction.
 *
 * @param fault whether it is the defect: fault switches act on these branches only
 * @param series the resistances in their order from the rail to ground
 * @param junction in series with them
 * @param driftPerKelvin relative change of its resistance with the rise of the first place in the
 *     series; negative for one that leaks more when warm
 */
public record LoadBranch(
    boolean fault, List<HeatShare> series, Optional<Junction> junction, double driftPerKelvin) {
  private static final double LEAST_DRIFT_FACTOR = 0.05;

  public LoadBranch {
    series = List.copyOf(series);
    if (series.stream().mapToDouble(HeatShare::ohms).sum() <= 0) {
      throw new IllegalArgumentException("a branch needs some resistance");
    }
  }

  public static LoadBranch of(String place, double ohms) {
    return new LoadBranch(false, List.of(new HeatShare(place, ohms)), Optional.empty(), 0);
  }

  public static LoadBranch fault(String place, double ohms) {
    return new LoadBranch(true, List.of(new HeatShare(place, ohms)), Optional.empty(), 0);
  }

  public LoadBranch withDriftPerKelvin(double drift) {
    return new LoadBranch(fault, series, junction, drift);
  }

  /** A path: the defect, and what lies before it. */
  public static LoadBranch faultBehind(
      String faultPlace, double faultOhms, String pathPlace, double pathOhms) {
    return new LoadBranch(
        true,
        List.of(new HeatShare(faultPlace, faultOhms), new HeatShare(pathPlace, pathOhms)),
        Optional.empty(),
        0);
  }

  /** A defect that conducts like a semiconductor, with some resistance. */
  public static LoadBranch leakyJunction(Junction junction, double seriesOhms) {
    return new LoadBranch(
        true, List.of(new HeatShare(junction.place(), seriesOhms)), Optional.of(junction), 0);
  }

  /** The place of the defect itself, or of the only consumer. */
  public String place() {
    return series.get(0).place();
  }

  /** Factor on the resistance when its place is this much warmer. */
  double driftFactor(double riseKelvin) {
    return Math.max(LEAST_DRIFT_FACTOR, 1 + driftPerKelvin * riseKelvin);
  }

  double ohms() {
    double sum = 0;
    for (HeatShare share : series) {
      sum += share.ohms();
    }
    return sum;
  }

  /**
   * Current at a rail voltage.
   *
   * @param scale factor on the resistances
   */
  double amperesAt(double volts, double scale) {
    double ohms = ohms() * scale;
    if (junction.isEmpty()) {
      return volts / ohms;
    }
    if (volts <= 0) {
      return 0;
    }
    // Newton on v = i R + Vj(i), from below; Vj is concave, so it can't overshoot for long.
    double amperes = 0;
    for (int k = 0; k < 60; k++) {
      double miss = volts - amperes * ohms - junction.get().voltsAt(amperes);
      double step = miss / (ohms + junction.get().ohmsAt(amperes));
      amperes = Math.max(0, amperes + step);
      if (Math.abs(step) <= 1e-12 + 1e-10 * amperes) {
        break;
      }
    }
    return amperes;
  }

  /** Differential conductance at a current. */
  double conductanceAt(double amperes, double scale) {
    double ohms = ohms() * scale;
    return 1 / (junction.isEmpty() ? ohms : ohms + junction.get().ohmsAt(amperes));
  }
}
