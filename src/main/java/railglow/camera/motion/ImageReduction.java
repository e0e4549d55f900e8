package railglow.camera.motion;

import railglow.thermal.CountSamples;
import railglow.thermal.Samples;

/**
 * Brings camera images to the size motion is looked for at: as they are, or the mean of 2 x 2 (or
 * more) pixels of a large one. A pixel that is not a number takes the value of its neighbour before
 * it. Immutable.
 */
final class ImageReduction {
  private static final int ENOUGH_PIXELS = 50_000;
  private final int factor;
  private final int width;
  private final int height;

  ImageReduction(int cameraWidth, int cameraHeight) {
    int wanted = 1;
    while ((cameraWidth / wanted) * (cameraHeight / wanted) > ENOUGH_PIXELS) {
      wanted++;
    }
    factor = wanted;
    width = cameraWidth / factor;
    height = cameraHeight / factor;
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
    for (int row = 0; row < height; row++) {
      for (int column = 0; column < width; column++) {
        int sum = 0;
        for (int y = 0; y < factor; y++) {
          int at = (row * factor + y) * cameraWidth + column * factor;
          for (int x = 0; x < factor; x++) {
            sum += counts[at + x] & 0xFFFF;
          }
        }
        into[row * width + column] = (float) (sum / (double) (factor * factor));
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
