package railglow.thermal;

import java.util.Arrays;

/**
 * Everything a detection depends on besides the frames; part of every run's record.
 *
 * @param periodSeconds of the pulses
 * @param cameraTimeConstantSeconds first-order lag of camera and its smoothing
 * @param familyWiseError allowed over the whole run
 * @param minCycles no look before these
 * @param maxCycles the cap, at which all of the error is spent
 * @param filterSigmasPixels widths of the matched filters, ascending
 * @param bodyTimeConstantsSeconds of the bodies searched for, ascending, 0 for one that follows at
 *     once; only the first and the last matter, the search covers all between
 * @param coded whether a cycle of the detector is a pair of coded cycles, see {@link CodedPairs}
 */
public record DetectionSettings(
    double periodSeconds,
    double cameraTimeConstantSeconds,
    double familyWiseError,
    int minCycles,
    int maxCycles,
    double[] filterSigmasPixels,
    double[] bodyTimeConstantsSeconds,
    boolean coded) {
  public DetectionSettings {
    require(periodSeconds > 0, "a period of " + periodSeconds + " s; it must be above 0");
    require(
        cameraTimeConstantSeconds >= 0 && cameraTimeConstantSeconds < 1e6,
        "a camera time constant of " + cameraTimeConstantSeconds + " s; it must be 0 or more");
    require(
        familyWiseError > 0 && familyWiseError < 1,
        "a family-wise error of " + familyWiseError + "; it must lie between 0 and 1");
    require(
        minCycles >= 2 && maxCycles >= minCycles,
        "looks from " + minCycles + " to " + maxCycles + " cycles; at least 2, ascending");
    require(ascending(filterSigmasPixels, 0.3), "filter widths must ascend, each 0.3 px or more");
    require(ascending(bodyTimeConstantsSeconds, 0), "time constants must ascend from 0 s or more");
  }

  /** For plain square pulses. */
  public DetectionSettings(
      double periodSeconds,
      double cameraTimeConstantSeconds,
      double familyWiseError,
      int minCycles,
      int maxCycles,
      double[] filterSigmasPixels,
      double[] bodyTimeConstantsSeconds) {
    this(
        periodSeconds,
        cameraTimeConstantSeconds,
        familyWiseError,
        minCycles,
        maxCycles,
        filterSigmasPixels,
        bodyTimeConstantsSeconds,
        false);
  }

  /** The same for coded pulses; cycles then are pairs. */
  public DetectionSettings inPairs() {
    return new DetectionSettings(
        periodSeconds,
        cameraTimeConstantSeconds,
        familyWiseError,
        minCycles,
        maxCycles,
        filterSigmasPixels,
        bodyTimeConstantsSeconds,
        true);
  }

  /** What a body of this time constant shows through the camera. */
  public FirstOrderResponse response(double bodySeconds) {
    return response(bodySeconds, cameraTimeConstantSeconds);
  }

  /** The same through another camera, with another lag. */
  FirstOrderResponse response(double bodySeconds, double cameraSeconds) {
    return coded
        ? FirstOrderResponse.coded(bodySeconds, cameraSeconds, periodSeconds)
        : FirstOrderResponse.of(bodySeconds, cameraSeconds, periodSeconds);
  }

  /** How long a cycle of the detector takes: a pair of the pulses' when they are coded. */
  public double cycleSeconds() {
    return coded ? 2 * periodSeconds : periodSeconds;
  }

  /** Widths that lose at most 1.5 % to any source of 1.3 to 7 pixels; bodies up to 3 periods. */
  public static DetectionSettings usual(
      double periodSeconds,
      double cameraTimeConstantSeconds,
      double familyWiseError,
      int minCycles,
      int maxCycles) {
    return new DetectionSettings(
        periodSeconds,
        cameraTimeConstantSeconds,
        familyWiseError,
        minCycles,
        maxCycles,
        usualFilterSigmasPixels(),
        usualBodyTimeConstantsSeconds(periodSeconds));
  }

  /** In steps of the root of 2. */
  public static double[] usualFilterSigmasPixels() {
    return new double[] {1.5, 2.1, 3.0, 4.2, 6.0};
  }

  /** From a body that follows at once to one of three periods. */
  public static double[] usualBodyTimeConstantsSeconds(double periodSeconds) {
    return new double[] {
      0,
      periodSeconds / 16,
      periodSeconds / 8,
      periodSeconds / 4,
      periodSeconds / 2,
      periodSeconds,
      3 * periodSeconds
    };
  }

  private static boolean ascending(double[] values, double least) {
    if (values.length == 0 || !(values[0] >= least)) {
      return false;
    }
    for (int i = 1; i < values.length; i++) {
      if (!(values[i] > values[i - 1]) || Double.isInfinite(values[i])) {
        return false;
      }
    }
    return true;
  }

  private static void require(boolean holds, String complaint) {
    if (!holds) {
      throw new IllegalArgumentException(complaint);
    }
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof DetectionSettings s
        && periodSeconds == s.periodSeconds
        && cameraTimeConstantSeconds == s.cameraTimeConstantSeconds
        && familyWiseError == s.familyWiseError
        && minCycles == s.minCycles
        && maxCycles == s.maxCycles
        && coded == s.coded
        && Arrays.equals(filterSigmasPixels, s.filterSigmasPixels)
        && Arrays.equals(bodyTimeConstantsSeconds, s.bodyTimeConstantsSeconds);
  }

  @Override
  public int hashCode() {
    return Arrays.hashCode(filterSigmasPixels) * 31
        + Arrays.hashCode(
            new double[] {
              periodSeconds, cameraTimeConstantSeconds, familyWiseError, minCycles, maxCycles
            });
  }
}
