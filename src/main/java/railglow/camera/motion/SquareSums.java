package railglow.camera.motion;

import java.util.Arrays;
import railglow.thermal.CountPairs;

/**
 * Sums of counts over squares of an even side, in whole rows of pairs, of which the compiler makes
 * vector code (decisions 0090 and 0096). Allocates nothing per image. Not thread-safe.
 */
final class SquareSums {
  private final int cameraWidth;
  private final int side;
  private final int width;
  private final int height;
  private final CountPairs pairs;
  private final int[] packed;
  private final int[] across;

  /** What does not fill a square, right and below, takes no part. */
  SquareSums(int cameraWidth, int cameraHeight, int side) {
    this.cameraWidth = cameraWidth;
    this.side = side;
    this.width = cameraWidth / side;
    this.height = cameraHeight / side;
    this.pairs = new CountPairs(cameraWidth);
    this.packed = new int[CountPairs.of(cameraWidth)];
    this.across = new int[packed.length];
  }

  /** Room for an image's sums. */
  int[][] newSums() {
    return new int[height][width];
  }

  void sum(short[] counts, int[][] into) {
    for (int row = 0; row < height; row++) {
      Arrays.fill(across, 0);
      for (int y = row * side; y < (row + 1) * side; y++) {
        pairs.pack(counts, y * cameraWidth, cameraWidth, packed);
        addPairs(across, packed);
      }
      join(into[row]);
    }
  }

  /** Each square's sums of pairs. */
  private void join(int[] into) {
    int each = side / 2;
    if (each == 1) {
      System.arraycopy(across, 0, into, 0, width);
      return;
    }
    for (int x = 0; x < width; x++) {
      int sum = 0;
      for (int k = x * each; k < (x + 1) * each; k++) {
        sum += across[k];
      }
      into[x] = sum;
    }
  }

  private static void addPairs(int[] sums, int[] pairs) {
    for (int i = 0; i < sums.length; i++) {
      sums[i] += (pairs[i] & 0xFFFF) + (pairs[i] >>> 16);
    }
  }
}
