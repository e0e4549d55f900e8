package railglow.thermal;

/**
 * What a camera's noise does to the two channels of a cycle. Frames may be correlated: many
 * uncooled cameras smooth in time by a recursive filter.
 *
 * @param noiseKelvin standard deviation of one pixel of one frame
 * @param framesPerSecond frame rate
 * @param correlation of a pixel's noise between one frame and the next, 0 for white, below 1
 * @param usableShare of the frames that are not left out (transitions, shutter), above 0 to 1
 */
public record PulseNoise(
    double noiseKelvin, double framesPerSecond, double correlation, double usableShare) {
  public PulseNoise {
    if (!(noiseKelvin > 0
        && framesPerSecond > 0
        && correlation >= 0
        && correlation < 1
        && usableShare > 0
        && usableShare <= 1)) {
      throw new IllegalArgumentException(
          "noise of %s K at %s frames/s with correlation %s (0 to below 1), %s of them usable"
              .formatted(noiseKelvin, framesPerSecond, correlation, usableShare));
    }
  }

  /** White noise, all frames usable. */
  public static PulseNoise white(double noiseKelvin, double framesPerSecond) {
    return new PulseNoise(noiseKelvin, framesPerSecond, 0, 1);
  }

  /** Variance of the in-phase channel of one cycle, K^2. */
  public double inPhaseVariance(double periodSeconds) {
    return variance(periodSeconds, new double[] {-0.5, 0.5, 0.5, -0.5});
  }

  /** Variance of the quadrature of one cycle, its slope correction included, K^2. */
  public double quadratureVariance(double periodSeconds) {
    return variance(periodSeconds, new double[] {-0.5, -0.5, 0.5, 0.5});
  }

  private double variance(double periodSeconds, double[] weights) {
    double perQuarter = framesPerSecond * periodSeconds / 4;
    if (correlation == 0) {
      return noiseKelvin * noiseKelvin / (perQuarter * usableShare);
    }
    int n = Math.max(1, (int) Math.round(perQuarter));
    // sum over pairs of w_i w_j rho^|i-j|, by carrying the discounted sum of what came before
    double before = 0;
    double sum = 0;
    for (int i = 0; i < 4 * n; i++) {
      double w = weights[i / n] / n;
      sum += w * (w + 2 * before);
      before = correlation * (before + w);
    }
    return noiseKelvin * noiseKelvin * sum / usableShare;
  }
}
