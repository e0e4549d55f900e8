package railglow.thermal;

/**
 * What a camera's noise does to the two channels of a cycle and to a filter over pixels. Frames may
 * be correlated, since many uncooled cameras smooth in time by a recursive filter; so may
 * neighbouring pixels; and slow drift may add to both.
 *
 * @param noiseKelvin standard deviation of one pixel of one frame
 * @param framesPerSecond frame rate
 * @param correlation of a pixel's noise between one frame and the next, 0 for white, below 1
 * @param usableShare of the frames that are not left out (transitions, shutter), above 0 to 1
 * @param horizontalCorrelation of the noise of pixels side by side, above -1, below 1
 * @param verticalCorrelation of the noise of pixels one above the other, likewise
 * @param variancePart what a channel's variance really is of what noise and correlation alone would
 *     give; above 1 where the camera drifts
 * @param rowVariancePart variance of a whole row's own movement over that of a pixel, which it is
 *     taken to be like in time
 * @param columnVariancePart likewise for columns
 */
public record PulseNoise(
    double noiseKelvin,
    double framesPerSecond,
    double correlation,
    double usableShare,
    double horizontalCorrelation,
    double verticalCorrelation,
    double variancePart,
    double rowVariancePart,
    double columnVariancePart) {
  public PulseNoise {
    if (!(noiseKelvin > 0
        && framesPerSecond > 0
        && correlation >= 0
        && correlation < 1
        && usableShare > 0
        && usableShare <= 1
        && Math.abs(horizontalCorrelation) < 1
        && Math.abs(verticalCorrelation) < 1
        && variancePart > 0
        && rowVariancePart >= 0
        && columnVariancePart >= 0)) {
      throw new IllegalArgumentException(
          "noise of %s K at %s frames/s with correlation %s (0 to below 1), %s of them usable"
              .formatted(noiseKelvin, framesPerSecond, correlation, usableShare));
    }
  }

  /** Pixels that know nothing of each other, no drift. */
  public PulseNoise(
      double noiseKelvin, double framesPerSecond, double correlation, double usableShare) {
    this(noiseKelvin, framesPerSecond, correlation, usableShare, 0, 0, 1, 0, 0);
  }

  /** The same with neighbours that share their noise. */
  public PulseNoise withNeighbours(double horizontal, double vertical) {
    return new PulseNoise(
        noiseKelvin,
        framesPerSecond,
        correlation,
        usableShare,
        horizontal,
        vertical,
        variancePart,
        rowVariancePart,
        columnVariancePart);
  }

  /**
   * The same with rows and columns that move as wholes.
   *
   * @param rowKelvin standard deviation of a whole row's movement in one frame
   * @param columnKelvin likewise of a column
   */
  public PulseNoise withLines(double rowKelvin, double columnKelvin) {
    return new PulseNoise(
        noiseKelvin,
        framesPerSecond,
        correlation,
        usableShare,
        horizontalCorrelation,
        verticalCorrelation,
        variancePart,
        rowKelvin * rowKelvin / (noiseKelvin * noiseKelvin),
        columnKelvin * columnKelvin / (noiseKelvin * noiseKelvin));
  }

  /**
   * The same with what was really measured at a period. The quadrature is the difference of two
   * means of P/2, whose variance is twice the Allan variance there by its definition (Allan, Proc.
   * IEEE 54, 1966, p. 221); the in-phase part of drift is smaller than that.
   *
   * @param allanDeviationKelvin of one pixel over half the period; NaN leaves all as it is
   */
  public PulseNoise measuredAt(double periodSeconds, double allanDeviationKelvin) {
    if (!(allanDeviationKelvin > 0)) {
      return this;
    }
    PulseNoise plain = new PulseNoise(noiseKelvin, framesPerSecond, correlation, usableShare);
    double measured = 2 * allanDeviationKelvin * allanDeviationKelvin / usableShare;
    return new PulseNoise(
        noiseKelvin,
        framesPerSecond,
        correlation,
        usableShare,
        horizontalCorrelation,
        verticalCorrelation,
        measured / plain.quadratureVariance(periodSeconds),
        rowVariancePart,
        columnVariancePart);
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

  /**
   * How much larger the variance behind a Gaussian filter is than with pixels that know nothing of
   * each other: the filter's own correlation exp(-d^2/(4 w^2)) summed with that of the noise, which
   * falls off geometrically along both axes.
   *
   * @param sigmaPixels w of the filter
   */
  public double filteredVariancePart(double sigmaPixels) {
    return along(horizontalCorrelation, sigmaPixels) * along(verticalCorrelation, sigmaPixels);
  }

  private static double along(double correlation, double sigma) {
    double sum = 1;
    int last = (int) Math.ceil(8 * sigma);
    for (int d = 1; d <= last; d++) {
      sum += 2 * Math.pow(correlation, d) * Math.exp(-d * d / (4 * sigma * sigma));
    }
    return sum;
  }

  private double variance(double periodSeconds, double[] weights) {
    double perQuarter = framesPerSecond * periodSeconds / 4;
    if (correlation == 0) {
      return variancePart * noiseKelvin * noiseKelvin / (perQuarter * usableShare);
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
    return variancePart * noiseKelvin * noiseKelvin * sum / usableShare;
  }
}
