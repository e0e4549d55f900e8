package railglow.thermal;

import java.util.List;

/**
 * What a body of first order shows in the two channels of the frames that were used, with the
 * output switched when it was: {@link FirstOrderResponse} and {@link CodedResponse} without their
 * assumption that every quarter is seen as a whole. Steady state, as if every cycle (or pair of
 * coded cycles) were like this one; each stretch between two edges is solved exactly. Own
 * derivation. Stateless.
 */
final class SampledResponse {
  /** Where a body goes that is not heated; heated it goes to 1/2. */
  private static final double OFF = -0.5;

  private SampledResponse() {}

  /**
   * Of two lags in a row, in either order.
   *
   * @param unit the one cycle of plain pulses, or the two of a coded pair
   */
  static FirstOrderResponse of(double bodySeconds, double cameraSeconds, List<CycleTimes> unit) {
    return FirstOrderResponse.inARow(
        tau -> of(tau, unit), bodySeconds, cameraSeconds, unit.get(0).periodSeconds());
  }

  /** Of one lag. */
  static FirstOrderResponse of(double timeConstant, List<CycleTimes> unit) {
    double state = steadyStart(timeConstant, unit);
    double inPhase = 0;
    double quadrature = 0;
    for (CycleTimes cycle : unit) {
      Course course = new Course(cycle, timeConstant, state);
      double[] mean = course.means();
      double share = (cycle.inverted() ? -0.5 : 0.5) / unit.size();
      inPhase += share * (mean[1] + mean[2] - mean[0] - mean[3]);
      quadrature += share * (mean[2] + mean[3] - mean[0] - mean[1]);
      state = course.atEnd();
    }
    return new FirstOrderResponse(inPhase, quadrature);
  }

  /** Where one lag is at the start of cycles that are all alike. */
  private static double steadyStart(double timeConstant, List<CycleTimes> unit) {
    double end = 0;
    double kept = 1;
    for (CycleTimes cycle : unit) {
      end = new Course(cycle, timeConstant, end).atEnd();
      kept *= Math.exp(-cycle.periodSeconds() / timeConstant);
    }
    // began at x, ends at x kept + end: at x again, or after a pair at -x, for the next is opposite
    return unit.size() == 1 ? end / (1 - kept) : -end / (1 + kept);
  }

  /**
   * Means of the frames used of a cycle's four quarters, of one lag that was at rest, the output
   * off, before the first of cycles like this one; against the middle of on and off, as shares of
   * the settled rise.
   *
   * @param timeConstant s
   * @param before how many such cycles came before this one
   */
  static double[] quartersFromRest(double timeConstant, int before, CycleTimes cycle) {
    double steady = steadyStart(timeConstant, List.of(cycle));
    double seconds = before * cycle.periodSeconds();
    double left = timeConstant > 0 ? Math.exp(-seconds / timeConstant) : 0;
    return new Course(cycle, timeConstant, steady + (OFF - steady) * left).means();
  }

  /** How one lag follows the output, -1/2 when off and 1/2 when on, through a cycle. */
  private static final class Course {
    private final CycleTimes cycle;
    private final double timeConstant;

    /** Of the stretches between edges: when each begins, where the body is then, where it goes. */
    private final double[] fromSeconds;

    private final double[] state;
    private final double[] drive;

    Course(CycleTimes cycle, double timeConstant, double atStart) {
      this.cycle = cycle;
      this.timeConstant = timeConstant;
      int stretches = cycle.switches() + 1;
      fromSeconds = new double[stretches];
      state = new double[stretches];
      drive = new double[stretches];
      state[0] = atStart;
      drive[0] = cycle.onAtStart() ? -OFF : OFF;
      for (int k = 1; k < stretches; k++) {
        fromSeconds[k] = cycle.switchSeconds(k - 1);
        state[k] = at(fromSeconds[k], k - 1);
        drive[k] = -drive[k - 1];
      }
    }

    private double at(double seconds, int stretch) {
      double since = Math.max(0, seconds - fromSeconds[stretch]);
      double left = timeConstant > 0 ? Math.exp(-since / timeConstant) : 0;
      return drive[stretch] + (state[stretch] - drive[stretch]) * left;
    }

    double atEnd() {
      return at(cycle.periodSeconds(), drive.length - 1);
    }

    double[] means() {
      double[] means = new double[4];
      for (int quarter = 0; quarter < 4; quarter++) {
        means[quarter] = mean(cycle.frameSeconds(quarter));
      }
      return means;
    }

    private double mean(double[] seconds) {
      double sum = 0;
      int stretch = 0;
      for (double at : seconds) {
        while (stretch > 0 && at < fromSeconds[stretch]) {
          stretch--;
        }
        while (stretch + 1 < drive.length && at >= fromSeconds[stretch + 1]) {
          stretch++;
        }
        sum += at(at, stretch);
      }
      return sum / seconds.length;
    }
  }
}
