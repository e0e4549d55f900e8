package railglow.thermal;

/**
 * What bodies of first order show in the quarters of a cycle when they were at rest before the
 * run's first pulse: the steady course of {@link SampledResponse} and what is left in this cycle of
 * the way there. One pixel a body, so that they go through the reduction that pixels go through.
 * Stateless.
 */
final class BodiesFromRest {
  private BodiesFromRest() {}

  /**
   * As shares of the settled rises.
   *
   * @param taus time constants, s
   * @param cameraSeconds lag of the camera
   * @param cycle from 0, the first that pulses
   */
  static QuarterMeans of(double[] taus, double cameraSeconds, int cycle, CycleTimes times) {
    Plane[] quarters = new Plane[4];
    for (int quarter = 0; quarter < 4; quarter++) {
      quarters[quarter] = new Plane(taus.length, 1);
    }
    int[] frames = new int[4];
    double[] ofCamera = SampledResponse.quartersFromRest(cameraSeconds, cycle, times);
    for (int k = 0; k < taus.length; k++) {
      double[] means =
          LagsInARow.of(
              tau ->
                  tau == cameraSeconds
                      ? ofCamera
                      : SampledResponse.quartersFromRest(tau, cycle, times),
              taus[k],
              cameraSeconds,
              times.periodSeconds());
      for (int quarter = 0; quarter < 4; quarter++) {
        quarters[quarter].values()[k] = (float) means[quarter];
        frames[quarter] = times.frameSeconds(quarter).length;
      }
    }
    return new QuarterMeans(cycle, quarters[0], quarters[1], quarters[2], quarters[3], frames)
        .at(times);
  }
}
