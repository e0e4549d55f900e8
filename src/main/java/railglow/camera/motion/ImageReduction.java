package railglow.camera.motion;

import java.util.Arrays;
import railglow.thermal.CountSamples;
import railglow.thermal.Samples;

/**
 * Brings camera images to the size motion is looked for at: as they are, or the mean of 2 x 2 (or
 * more) pixels of a large one. A pixel that is not a number takes the value of its neighbour before
 * it. Not thread-safe.
 */
final class ImageReduction {
  private static final int ENOUGH_PIXELS = 50_000;
  private final int factor;
  private final int width;
  private final int height;
  private final int[] sums;

  ImageReduction(int cameraWidth, int cameraHeight) {
    int wanted = 1;
    while ((cameraWidth / wanted) * (cameraHeight / wanted) > ENOUGH_PIXELS) {
      wanted++;
    }
    factor = wanted;
    width = cameraWidth / factor;
    height = cameraHeight / factor;
    sums = new int[width];
  }

  int factor() {
    return factor;
  }

  int width() {
    return width;
  }

  int height() {
    return height;
  }

  void read(Samples image, float[] into) {
    if (image instanceof CountSamples counted) {
      readCounts(counted.counts(), counted.width(), into);
    } else {
      readValues(image, into);
    }
  }

  private void readCounts(short[] counts, int cameraWidth, float[] into) {
    if (factor == 1) {
      for (int i = 0; i < into.length; i++) {
        into[i] = counts[i] & 0xFFFF;
      }
      return;
    }
    float share = 1.0f / (factor * factor);
    for (int row = 0; row < height; row++) {
      Arrays.fill(sums, 0);
      for (int y = 0; y < factor; y++) {
        addRow(counts, (row * factor + y) * cameraWidth);
      }
      for (int column = 0; column < width; column++) {
        into[row * width + column] = sums[column] * share;
      }
    }
  }

  /** The usual factors have loops of their own, for a loop of two or four steps is dear. */
  private void addRow(short[] counts, int start) {
    int at = start;
    if (factor == 2) {
      for (int column = 0; column < width; column++, at += 2) {
        sums[column] += (counts[at] & 0xFFFF) + (counts[at + 1] & 0xFFFF);
      }
    } else if (factor == 4) {
      for (int column = 0; column < width; column++, at += 4) {
        int left = (counts[at] & 0xFFFF) + (counts[at + 1] & 0xFFFF);
        sums[column] += left + (counts[at + 2] & 0xFFFF) + (counts[at + 3] & 0xFFFF);
      }
    } else {
      for (int column = 0; column < width; column++) {
        for (int x = 0; x < factor; x++) {
          sums[column] += counts[at++] & 0xFFFF;
        }
      }
    }
  }

  private void readValues(Samples image, float[] into) {
    int cameraWidth = image.width();
    double last = 0;
    for (int row = 0; row < height; row++) {
      for (int column = 0; column < width; column++) {
        double sum = 0;
        for (int y = 0; y < factor; y++) {
          int at = (row * factor + y) * cameraWidth + column * factor;
          for (int x = 0; x < factor; x++) {
            double value = image.valueAt(at + x);
            last = value - value == 0 ? value : last;
            sum += last;
          }
        }
        into[row * width + column] = (float) (sum / (factor * factor));
      }
    }
  }
}
