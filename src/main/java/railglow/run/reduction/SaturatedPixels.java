package railglow.run.reduction;

import railglow.camera.PixelScreen;
import railglow.thermal.CountSamples;
import railglow.thermal.Plane;
import railglow.thermal.QuarterMeans;
import railglow.thermal.Samples;

/**
 * Pixels that were at the end of the camera's scale in a frame that was used. From that cycle on
 * they take no part: a rise that is cut off is no rise. Not thread-safe.
 */
final class SaturatedPixels {
  private final int width;
  private final double saturationValue;
  private final boolean[] saturated;
  private final PixelScreen screen = new PixelScreen(false);
  private int count;
  private int told;

  /**
   * @param saturationValue samples at or above it; may be infinite
   */
  SaturatedPixels(int width, int height, double saturationValue) {
    this.width = width;
    this.saturationValue = saturationValue;
    this.saturated = new boolean[width * height];
  }

  /** Looks at an image that is used. */
  void watch(Samples image) {
    if (image instanceof CountSamples counted) {
      if (saturationValue <= 0xFFFF) {
        watchCounts(counted.counts(), (int) Math.ceil(saturationValue));
      }
    } else if (saturationValue < Double.POSITIVE_INFINITY) {
      for (int i = 0; i < saturated.length; i++) {
        if (image.valueAt(i) >= saturationValue) {
          mark(i);
        }
      }
    }
  }

  private void watchCounts(short[] counts, int level) {
    for (int start = 0; start < counts.length; start += PixelScreen.STRETCH) {
      if (screen.mayBeAbove(counts, start, level - 1)) {
        int end = Math.min(start + PixelScreen.STRETCH, counts.length);
        for (int i = start; i < end; i++) {
          if ((counts[i] & 0xFFFF) >= level) {
            mark(i);
          }
        }
      }
    }
  }

  private void mark(int index) {
    count += saturated[index] ? 0 : 1;
    saturated[index] = true;
  }

  /** What there is to tell: the first ones, and each time they have become twice as many. */
  String news() {
    if (count == 0 || count < 2 * told) {
      return "";
    }
    told = count;
    int left = width;
    int right = 0;
    int top = saturated.length / width;
    int bottom = 0;
    for (int i = 0; i < saturated.length; i++) {
      if (saturated[i]) {
        left = Math.min(left, i % width);
        right = Math.max(right, i % width);
        top = Math.min(top, i / width);
        bottom = Math.max(bottom, i / width);
      }
    }
    return count
        + (count == 1 ? " pixel is" : " pixels are")
        + " at the end of the camera's scale and left out from here on, within columns "
        + left
        + " to "
        + right
        + " and rows "
        + top
        + " to "
        + bottom
        + ": what is there is hotter than the camera can say, and its rise is not known";
  }

  /** Takes these pixels out of a cycle's means, in place: what they read is no temperature. */
  void blank(QuarterMeans means) {
    if (count == 0) {
      return;
    }
    Plane[] quarters = {means.q1(), means.q2(), means.q3(), means.q4()};
    for (int i = 0; i < saturated.length; i++) {
      if (saturated[i]) {
        for (Plane quarter : quarters) {
          quarter.values()[i] = Float.NaN;
        }
      }
    }
  }
}
