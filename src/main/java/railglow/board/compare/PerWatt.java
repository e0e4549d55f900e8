package railglow.board.compare;

import java.util.ArrayList;
import java.util.List;
import railglow.thermal.HeatSource;
import railglow.thermal.RiseByModel;
import railglow.units.Interval;

/**
 * What one place does per watt in two runs, second minus first. Swings are compared where both runs
 * pulsed alike: nothing has to be supposed for them. Settled rises are compared model by model,
 * since how heat goes on after a pulse is the same in both runs; of the models that the data of
 * both allow the one speaks that sees least of a difference. Immutable.
 *
 * @param sigma of the difference
 */
record PerWatt(double first, double second, double sigma) {
  /**
   * Standard deviation with which a rise per watt is repeated by another run of the same part: the
   * power's error, the edges' times, the fit of a body that is no single lag. Measured on the
   * simulated bench, where one part at two injection points gave 4.47 and 4.04 K/W.
   */
  static final double REPEAT_SHARE = 0.05;

  /** A value with its standard deviation. */
  record Known(double value, double sigma) {
    static Known of(double value, Interval interval95, double watts) {
      double noise = interval95.sigmaOf95() / watts;
      return new Known(value / watts, Math.hypot(noise, REPEAT_SHARE * value / watts));
    }
  }

  static Known swing(ComparedRun run, HeatSource source) {
    return Known.of(source.swingKelvin(), source.swingInterval95(), run.watts());
  }

  static Known settled(ComparedRun run, HeatSource source) {
    return Known.of(source.riseKelvin(), source.riseInterval95(), run.watts());
  }

  /** Whether the swings of both runs can be compared. */
  static boolean bySwing(ComparedRun first, ComparedRun second) {
    return first.pulses().isLike(second.pulses());
  }

  static PerWatt of(ComparedRun first, HeatSource a, ComparedRun second, HeatSource b) {
    if (bySwing(first, second)) {
      return of(swing(first, a), swing(second, b));
    }
    List<PerWatt> byModel = new ArrayList<>();
    for (RiseByModel one : a.models()) {
      for (RiseByModel other : b.models()) {
        if (one.model() == other.model()) {
          byModel.add(
              of(
                  Known.of(one.kelvin(), one.interval95(), first.watts()),
                  Known.of(other.kelvin(), other.interval95(), second.watts())));
        }
      }
    }
    return byModel.stream()
        .min(java.util.Comparator.comparingDouble(PerWatt::sigmas))
        .orElseGet(() -> of(settled(first, a), settled(second, b)));
  }

  private static PerWatt of(Known a, Known b) {
    return new PerWatt(a.value(), b.value(), Math.hypot(a.sigma(), b.sigma()));
  }

  double difference() {
    return second - first;
  }

  private double sigmas() {
    return Math.abs(difference()) / sigma;
  }
}
