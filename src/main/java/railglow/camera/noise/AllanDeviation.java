package railglow.camera.noise;

/**
 * Allan deviations of a series of values, each the mean over one step (frequency data in the words
 * of the source). Definitions: W. J. Riley, Handbook of Frequency Stability Analysis, NIST Special
 * Publication 1065 (2008), equations 6 to 14. Pure.
 */
public final class AllanDeviation {
  private AllanDeviation() {}

  /**
   * From non-overlapping means of {@code m} values.
   *
   * @param m at least 1
   * @return NaN when there are fewer than two means
   */
  public static double plain(double[] values, int m) {
    int means = values.length / m;
    if (means < 2) {
      return Double.NaN;
    }
    double squares = 0;
    double previous = mean(values, 0, m);
    for (int k = 1; k < means; k++) {
      double next = mean(values, k * m, m);
      squares += (next - previous) * (next - previous);
      previous = next;
    }
    return Math.sqrt(squares / (2.0 * (means - 1)));
  }

  /**
   * From means of {@code m} values that start at every value: the same expectation with less
   * scatter.
   *
   * @return NaN when there are fewer than 2 m values
   */
  public static double overlapping(double[] values, int m) {
    return Math.sqrt(overlappingVariance(values, m));
  }

  /** The square of {@link #overlapping}. */
  public static double overlappingVariance(double[] values, int m) {
    int count = values.length - 2 * m + 1;
    if (count < 1) {
      return Double.NaN;
    }
    double first = 0;
    double second = 0;
    for (int i = 0; i < m; i++) {
      first += values[i];
      second += values[m + i];
    }
    double squares = 0;
    for (int j = 0; j < count; j++) {
      double difference = (second - first) / m;
      squares += difference * difference;
      if (j + 2 * m < values.length) {
        first += values[j + m] - values[j];
        second += values[j + 2 * m] - values[j + m];
      }
    }
    return squares / (2.0 * count);
  }

  /**
   * The modified deviation, which also averages the differences: it tells white from flicker phase
   * noise.
   *
   * @return NaN when there are fewer than 3 m - 1 values
   */
  public static double modified(double[] values, int m) {
    int count = values.length - 3 * m + 2;
    if (count < 1) {
      return Double.NaN;
    }
    double squares = 0;
    for (int j = 0; j < count; j++) {
      double sum = 0;
      for (int i = j; i < j + m; i++) {
        sum += mean(values, i + m, m) - mean(values, i, m);
      }
      squares += sum * sum;
    }
    return Math.sqrt(squares / (2.0 * m * m * count));
  }

  private static double mean(double[] values, int start, int count) {
    double sum = 0;
    for (int i = start; i < start + count; i++) {
      sum += values[i];
    }
    return sum / count;
  }
}
