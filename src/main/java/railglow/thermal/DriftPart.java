package railglow.thermal;

import java.util.List;

/**
 * What a slope of the drift, per period, adds to a cycle by the times of its frames. Immutable.
 *
 * @param inPhase added in phase
 * @param quadrature added in quadrature
 * @param late how much later than the cycle's middle its mean is, in periods
 */
record DriftPart(double inPhase, double quadrature, double late) {
  static final DriftPart OF_WHOLE_QUARTERS = new DriftPart(0, 0.5, 0);

  /** Of a plain cycle; a coded pair's two cycles take the drift out of one another. */
  static DriftPart of(List<CycleTimes> times) {
    if (times.size() != 1) {
      return OF_WHOLE_QUARTERS;
    }
    double[] late = new double[4];
    for (int quarter = 0; quarter < 4; quarter++) {
      late[quarter] = times.get(0).latePeriods(quarter);
    }
    return new DriftPart(
        (late[1] + late[2] - late[0] - late[3]) / 2,
        0.5 + (late[2] + late[3] - late[0] - late[1]) / 2,
        (late[0] + late[1] + late[2] + late[3]) / 4);
  }
}
