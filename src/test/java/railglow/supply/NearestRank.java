package railglow.supply;

import java.util.List;

/** Percentiles of times, by nearest rank. */
final class NearestRank {
  private NearestRank() {}

  static double[] sorted(List<Double> values) {
    return values.stream().mapToDouble(Double::doubleValue).sorted().toArray();
  }

  /**
   * @param sorted one value or more
   * @param share from 0 to 1
   */
  static double at(double[] sorted, double share) {
    return sorted[Math.max(0, (int) Math.ceil(share * sorted.length) - 1)];
  }
}
