package railglow.run.logging;

import railglow.board.places.PlacePixels;
import railglow.thermal.Samples;

/**
 * Mean, lowest and highest value of a place in one image, and of its rise above a baseline image.
 * Not thread-safe; reused from frame to frame.
 */
final class FollowedPlace {
  private final int[] indices;
  private double mean;
  private double low;
  private double high;
  private double riseMean;
  private double riseLow;
  private double riseHigh;

  FollowedPlace(PlacePixels pixels) {
    this.indices = pixels.indices();
  }

  /**
   * @param scale a sample's factor
   * @param zero value of a sample of 0
   * @param baseline in the same unit; null before there is one
   */
  void look(Samples samples, double scale, double zero, float[] baseline) {
    double sum = 0;
    double riseSum = 0;
    low = Double.POSITIVE_INFINITY;
    high = Double.NEGATIVE_INFINITY;
    riseLow = Double.POSITIVE_INFINITY;
    riseHigh = Double.NEGATIVE_INFINITY;
    for (int index : indices) {
      double value = zero + scale * samples.valueAt(index);
      sum += value;
      low = Math.min(low, value);
      high = Math.max(high, value);
      if (baseline != null) {
        double rise = value - baseline[index];
        riseSum += rise;
        riseLow = Math.min(riseLow, rise);
        riseHigh = Math.max(riseHigh, rise);
      }
    }
    mean = sum / indices.length;
    riseMean = baseline == null ? Double.NaN : riseSum / indices.length;
    riseLow = baseline == null ? Double.NaN : riseLow;
    riseHigh = baseline == null ? Double.NaN : riseHigh;
  }

  double mean() {
    return mean;
  }

  double low() {
    return low;
  }

  double high() {
    return high;
  }

  double riseMean() {
    return riseMean;
  }

  double riseLow() {
    return riseLow;
  }

  double riseHigh() {
    return riseHigh;
  }
}
