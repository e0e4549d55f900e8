package railglow.thermal;

import java.util.Arrays;

/**
 * When the output was switched in one cycle, and when the frames used of it were taken: in seconds
 * from the cycle's planned start. Frames too near to an edge are left out, and how many fall into a
 * quarter depends on how they stand to its bounds, so their mean is not that of the whole quarter.
 * Immutable.
 */
public final class CycleTimes {
  private final double periodSeconds;
  private final boolean inverted;
  private final boolean onAtStart;
  private final double[] switchSeconds;
  private final double[][] frameSeconds;

  /**
   * @param periodSeconds planned length of the cycle, above 0
   * @param inverted whether it was planned as ON OFF OFF ON
   * @param onAtStart whether the output was on before the first switch
   * @param switchSeconds when the output changed, ascending
   * @param frameSeconds mid-exposures by quarter, 4 arrays of at least 1
   */
  public CycleTimes(
      double periodSeconds,
      boolean inverted,
      boolean onAtStart,
      double[] switchSeconds,
      double[][] frameSeconds) {
    if (!(periodSeconds > 0) || frameSeconds.length != 4) {
      throw new IllegalArgumentException(
          frameSeconds.length + " quarters of " + periodSeconds + " s; 4 above 0 s are needed");
    }
    this.periodSeconds = periodSeconds;
    this.inverted = inverted;
    this.onAtStart = onAtStart;
    this.switchSeconds = switchSeconds.clone();
    this.frameSeconds = new double[4][];
    for (int quarter = 0; quarter < 4; quarter++) {
      if (frameSeconds[quarter].length == 0) {
        throw new IllegalArgumentException("quarter " + (quarter + 1) + " has no frame");
      }
      this.frameSeconds[quarter] = frameSeconds[quarter].clone();
    }
  }

  double periodSeconds() {
    return periodSeconds;
  }

  boolean inverted() {
    return inverted;
  }

  boolean onAtStart() {
    return onAtStart;
  }

  int switches() {
    return switchSeconds.length;
  }

  double switchSeconds(int index) {
    return switchSeconds[index];
  }

  /** Mid-exposures of a quarter, 0 to 3; not to be written to. */
  double[] frameSeconds(int quarter) {
    return frameSeconds[quarter];
  }

  /** How much later than the quarter's middle its frames are in the mean, in periods. */
  double latePeriods(int quarter) {
    double mean = Arrays.stream(frameSeconds[quarter]).average().orElseThrow();
    return mean / periodSeconds - (quarter + 0.5) / 4;
  }
}
