package railglow.thermal;

/**
 * The observer who knows the source's width and time constant and the noise, looks once, at the
 * end, and only does not know where the source is: the yardstick for sensitivity.
 */
final class IdealObserver {
  private final int width;
  private final int height;
  private final double sigma;
  private final FirstOrderResponse response;
  private final double channelNoise;
  private final MatchedFilter filter;
  private final double threshold;
  private final float[] sum;
  private int cycles;

  /**
   * @param quarterNoise standard deviation of a quarter mean; it is that of a channel, too
   */
  IdealObserver(
      int width, int height, double sigma, FirstOrderResponse response, double quarterNoise) {
    this.width = width;
    this.height = height;
    this.sigma = sigma;
    this.response = response;
    this.channelNoise = quarterNoise;
    filter = new MatchedFilter(width, height, sigma);
    threshold = threshold(width, height, sigma, 0.05);
    sum = new float[width * height];
  }

  /** The score that noise alone passes anywhere in the picture with this probability. */
  static double threshold(int width, int height, double sigma, double error) {
    FieldFamily family =
        new FieldFamily(
            width, height, new double[] {sigma}, new double[] {Double.POSITIVE_INFINITY}, 0, 1);
    return threshold(family, error);
  }

  /** The same for any family of tests. */
  static double threshold(FieldFamily family, double error) {
    double low = 1;
    double high = 10;
    for (int i = 0; i < 60; i++) {
      double middle = (low + high) / 2;
      if (family.probabilityAbove(middle) > error) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return high;
  }

  void add(QuarterMeans q) {
    double i = response.inPhase() / response.size() / 2;
    double c = response.quadrature() / response.size() / 2;
    float[] q1 = q.q1().values();
    float[] q2 = q.q2().values();
    float[] q3 = q.q3().values();
    float[] q4 = q.q4().values();
    for (int p = 0; p < sum.length; p++) {
      sum[p] += (float) (i * (q2[p] + q3[p] - q1[p] - q4[p]) + c * (q3[p] + q4[p] - q1[p] - q2[p]));
    }
    cycles++;
  }

  /** Largest score near a place, as a multiple of the threshold. */
  double shareOfThreshold(double column, double row) {
    float[] filtered = new float[sum.length];
    filter.apply(sum, filtered);
    double best = 0;
    for (int y = 0, p = 0; y < height; y++) {
      for (int x = 0; x < width; x++, p++) {
        if (Math.hypot(x - column, y - row) <= 2 * sigma) {
          best = Math.max(best, filtered[p] / (channelNoise * Math.sqrt(cycles)));
        }
      }
    }
    return best / threshold;
  }
}
