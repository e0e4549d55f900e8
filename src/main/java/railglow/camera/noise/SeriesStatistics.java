package railglow.camera.noise;

import java.util.Arrays;
import java.util.List;

/** Statistics of many series of equal length, given time by time. */
final class SeriesStatistics {
  private final double[][] series;
  private final int perSite;

  /**
   * @param times for each time, the values of all series
   * @param perSite series that belong together; only the first of each group stands for its site
   */
  SeriesStatistics(List<float[]> times, int perSite) {
    this.perSite = perSite;
    this.series = new double[times.get(0).length][times.size()];
    for (int t = 0; t < times.size(); t++) {
      float[] values = times.get(t);
      for (int k = 0; k < values.length; k++) {
        series[k][t] = values[k];
      }
    }
  }

  double medianVariance() {
    double[] variances = new double[series.length / perSite];
    for (int k = 0; k < variances.length; k++) {
      variances[k] = variance(series[k * perSite]);
    }
    return median(variances);
  }

  double meanVariance() {
    return Arrays.stream(series).mapToDouble(SeriesStatistics::variance).average().orElse(0);
  }

  double medianStepVariance() {
    double[] variances = new double[series.length / perSite];
    for (int k = 0; k < variances.length; k++) {
      double[] values = series[k * perSite];
      double[] steps = new double[values.length - 1];
      for (int t = 0; t < steps.length; t++) {
        steps[t] = values[t + 1] - values[t];
      }
      variances[k] = variance(steps);
    }
    return median(variances);
  }

  double lagOneCorrelation() {
    double products = 0;
    double squares = 0;
    for (int k = 0; k < series.length; k += perSite) {
      double[] values = series[k];
      double mean = Arrays.stream(values).average().orElse(0);
      for (int t = 0; t + 1 < values.length; t++) {
        products += (values[t] - mean) * (values[t + 1] - mean);
        squares += (values[t] - mean) * (values[t] - mean);
      }
    }
    return squares == 0 ? 0 : products / squares;
  }

  /** Between two series of each group. */
  double correlation(int first, int second) {
    double products = 0;
    double squaresA = 0;
    double squaresB = 0;
    for (int k = 0; k + perSite <= series.length; k += perSite) {
      double[] a = series[k + first];
      double[] b = series[k + second];
      double meanA = Arrays.stream(a).average().orElse(0);
      double meanB = Arrays.stream(b).average().orElse(0);
      for (int t = 0; t < a.length; t++) {
        products += (a[t] - meanA) * (b[t] - meanB);
        squaresA += (a[t] - meanA) * (a[t] - meanA);
        squaresB += (b[t] - meanB) * (b[t] - meanB);
      }
    }
    double scale = Math.sqrt(squaresA * squaresB);
    return scale == 0 ? 0 : products / scale;
  }

  /** Root of the mean overlapping Allan variance over the sites. */
  double allanDeviation(int m) {
    double sum = 0;
    int count = 0;
    for (int k = 0; k < series.length; k += perSite) {
      sum += AllanDeviation.overlappingVariance(series[k], m);
      count++;
    }
    return Math.sqrt(sum / count);
  }

  static double variance(double[] values) {
    double mean = Arrays.stream(values).average().orElse(0);
    double squares = 0;
    for (double value : values) {
      squares += (value - mean) * (value - mean);
    }
    return values.length < 2 ? 0 : squares / (values.length - 1);
  }

  private static double median(double[] values) {
    Arrays.sort(values);
    return values[values.length / 2];
  }
}
