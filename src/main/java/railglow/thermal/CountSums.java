package railglow.thermal;

import java.util.Arrays;

/**
 * Exact sums of images of 16-bit counts, pixel by pixel. Adding an image allocates nothing. Not
 * thread-safe.
 *
 * <p>Sums of even and odd pixels lie apart, in tiles whose pairs are in the cache when they are
 * added (decision 0097).
 */
public final class CountSums {
  /** So many images of the highest count fit an int. */
  public static final int MOST_IMAGES = Integer.MAX_VALUE / 65536;

  private static final int TILE = 4096;
  private final CountPairs pairs = new CountPairs(TILE);
  private final int[] tilePairs = new int[CountPairs.of(TILE)];
  private final int[][] evens;
  private final int[][] odds;
  private int images;

  /** Of images of so many pixels. */
  public CountSums(int pixels) {
    evens = tiles(pixels);
    odds = tiles(pixels);
  }

  private static int[][] tiles(int pixels) {
    int[][] tiles = new int[(pixels + TILE - 1) / TILE][];
    for (int tile = 0; tile < tiles.length; tile++) {
      tiles[tile] = new int[CountPairs.of(Math.min(TILE, pixels - tile * TILE))];
    }
    return tiles;
  }

  /**
   * Adds an image.
   *
   * @throws IllegalStateException beyond {@link #MOST_IMAGES}
   */
  public void add(short[] counts) {
    if (images == MOST_IMAGES) {
      throw new IllegalStateException("more than " + MOST_IMAGES + " images in one sum");
    }
    for (int tile = 0; tile < evens.length; tile++) {
      int start = tile * TILE;
      pairs.pack(counts, start, Math.min(TILE, counts.length - start), tilePairs);
      addPairs(tilePairs, evens[tile], odds[tile]);
    }
    images++;
  }

  /** Must stay vector code (decision 0097). */
  private static void addPairs(int[] pairs, int[] evenSums, int[] oddSums) {
    for (int i = 0; i < evenSums.length; i++) {
      evenSums[i] += pairs[i] & 0xFFFF;
      oddSums[i] += pairs[i] >>> 16;
    }
  }

  /** How many images have been added since the last reset. */
  public int images() {
    return images;
  }

  /** The sum of one pixel. */
  public int sumAt(int pixel) {
    int[][] sums = (pixel & 1) == 0 ? evens : odds;
    return sums[pixel / TILE][pixel % TILE >> 1];
  }

  /** Forgets all images. */
  public void reset() {
    for (int tile = 0; images > 0 && tile < evens.length; tile++) {
      Arrays.fill(evens[tile], 0);
      Arrays.fill(odds[tile], 0);
    }
    images = 0;
  }

  /**
   * Gives what the images lie above others on the mean, (sum - images x offset) x scale / images;
   * and forgets them, while their sums are in the cache. Needs at least one image.
   *
   * @param offsets sums of one image of the same size
   * @param mean one value for each pixel
   */
  void takeMeansAbove(CountSums offsets, double scale, float[] mean) {
    double each = scale / images;
    for (int tile = 0; tile < evens.length; tile++) {
      int start = tile * TILE;
      takeMeansAbove(evens[tile], offsets.evens[tile], each, mean, start);
      takeMeansAbove(odds[tile], offsets.odds[tile], each, mean, start + 1);
    }
    images = 0;
  }

  /** Of every second pixel. Sums and offsets as often both fit an int, so does what is between. */
  private void takeMeansAbove(int[] sums, int[] offsets, double each, float[] mean, int first) {
    int n = images;
    int pixels = Math.min(sums.length, (mean.length - first + 1) / 2);
    for (int i = 0; i < pixels; i++) {
      mean[first + 2 * i] = (float) ((sums[i] - n * offsets[i]) * each);
    }
    Arrays.fill(sums, 0);
  }
}
