package railglow.camera.alignment;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import railglow.thermal.Samples;

/** Finds the one place that is warm while the output is on. Not thread-safe. */
final class SpotSearch {
  private static final double LEAST_SIGNIFICANCE = 8;
  private static final int REACH = 1;
  private static final int RING_INNER = 8;
  private static final int RING_OUTER = 10;
  private final int width;
  private final int height;
  private final double[] onSum;
  private final double[] offSum;
  private int onFrames;
  private int offFrames;

  SpotSearch(int width, int height) {
    this.width = width;
    this.height = height;
    this.onSum = new double[width * height];
    this.offSum = new double[width * height];
  }

  void add(Samples image, boolean on) {
    double[] sum = on ? onSum : offSum;
    for (int i = 0; i < sum.length; i++) {
      sum[i] += image.valueAt(i);
    }
    onFrames += on ? 1 : 0;
    offFrames += on ? 0 : 1;
  }

  Spot find() throws AlignmentRefusedException {
    if (onFrames == 0 || offFrames == 0) {
      throw new AlignmentRefusedException(
          "no frame came late enough in a pulse; pulses must be longer than half a second");
    }
    double[] difference = new double[onSum.length];
    for (int i = 0; i < difference.length; i++) {
      difference[i] = onSum[i] / onFrames - offSum[i] / offFrames;
    }
    double middle = median(difference);
    double[] off = new double[difference.length];
    for (int i = 0; i < off.length; i++) {
      off[i] = Math.abs(difference[i] - middle);
    }
    double scatter = 1.4826 * median(off);
    int warmest = warmest(difference);
    double height3 = meanAround(difference, warmest) - middle;
    if (!(height3 > LEAST_SIGNIFICANCE * scatter / 3)) {
      throw new AlignmentRefusedException(
          "nothing in view follows the pulses clearly; put the resistor in the middle of the"
              + " picture, bring the camera closer, or give it more power");
    }
    return spot(difference, middle, warmest);
  }

  private Spot spot(double[] difference, double middle, int warmest) {
    List<Integer> pixels = new ArrayList<>();
    List<Integer> around = new ArrayList<>();
    int column = warmest % width;
    int row = warmest / width;
    for (int y = Math.max(0, row - RING_OUTER); y <= Math.min(height - 1, row + RING_OUTER); y++) {
      for (int x = Math.max(0, column - RING_OUTER);
          x <= Math.min(width - 1, column + RING_OUTER);
          x++) {
        int distance = Math.max(Math.abs(x - column), Math.abs(y - row));
        boolean finite = difference[y * width + x] - difference[y * width + x] == 0;
        if (distance <= REACH && finite && difference[y * width + x] > middle) {
          pixels.add(y * width + x);
        } else if (distance >= RING_INNER && finite) {
          around.add(y * width + x);
        }
      }
    }
    int[] indices = pixels.stream().mapToInt(Integer::intValue).toArray();
    double[] weights = new double[indices.length];
    double sum = 0;
    for (int k = 0; k < weights.length; k++) {
      weights[k] = difference[indices[k]] - middle;
      sum += weights[k];
    }
    for (int k = 0; k < weights.length; k++) {
      weights[k] /= sum;
    }
    int[] ring =
        around.isEmpty() ? new int[] {0} : around.stream().mapToInt(Integer::intValue).toArray();
    return new Spot(warmest, indices, weights, ring);
  }

  /** By the mean of 3 x 3 pixels less the warmest of them, so that one bad pixel can't win. */
  private int warmest(double[] difference) {
    int best = width + 1;
    double most = Double.NEGATIVE_INFINITY;
    for (int row = 1; row < height - 1; row++) {
      for (int column = 1; column < width - 1; column++) {
        double here = meanAround(difference, row * width + column);
        if (here > most) {
          most = here;
          best = row * width + column;
        }
      }
    }
    return best;
  }

  private double meanAround(double[] values, int index) {
    double sum = 0;
    double most = Double.NEGATIVE_INFINITY;
    for (int y = -1; y <= 1; y++) {
      for (int x = -1; x <= 1; x++) {
        double value = values[index + y * width + x];
        sum += value;
        most = Math.max(most, value);
      }
    }
    return (sum - most) / 8;
  }

  private static double median(double[] values) {
    double[] finite = Arrays.stream(values).filter(value -> value - value == 0).sorted().toArray();
    return finite.length == 0 ? 0 : finite[finite.length / 2];
  }
}
