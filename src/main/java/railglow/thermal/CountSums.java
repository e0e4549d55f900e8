package railglow.thermal;

import java.util.Arrays;

/**
 * Exact sums of images of 16-bit counts, pixel by pixel. Adding an image allocates nothing, but for
 * the 258th. Not thread-safe.
 *
 * <p>Kept are the sum of a pixel's counts modulo 65536 and the sum of their high bytes, both in 16
 * bits, for loops over shorts become vector code where those from shorts to ints do not. What the
 * high bytes do not account for is the sum of the low bytes, which 16 bits hold as well (decision
 * 0111).
 */
public final class CountSums {
  /** So many images of the highest count fit an int. */
  public static final int MOST_IMAGES = Integer.MAX_VALUE / 65536;

  /** So many bytes of 255 fit 16 bits. */
  private static final int MOST_BYTES = 257;

  /** Pixels at a time that are forgotten while they are in the cache. */
  private static final int TILE = 4096;

  private static final int PAGE = 4096;
  private static final int APART = 224;
  private static final int ARRAY_HEAD = 16;

  private final short[] sums;
  private final short[] highSums;

  /** What the images were that no longer are in the short sums; null before there are such. */
  private int[] earlier;

  private int images;
  private int imagesInShorts;

  /** Of images of so many pixels. */
  public CountSums(int pixels) {
    sums = new short[apart(pixels)];
    highSums = new short[apart(pixels)];
  }

  /**
   * A length for arrays that follow each other to begin a few lines of the cache apart in their
   * page: a processor that tells loads and stores by their place in the page would let those of one
   * wait for those of the other (decision 0120).
   */
  private static int apart(int pixels) {
    int bytes = ARRAY_HEAD + Short.BYTES * pixels;
    int more = Math.floorMod(APART - bytes, PAGE);
    return pixels + more / Short.BYTES;
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
    if (imagesInShorts == MOST_BYTES) {
      moveToInts();
    }
    add(counts, sums, highSums);
    images++;
    imagesInShorts++;
  }

  /** Must stay vector code: a mask or an unsigned shift in it would undo that (decision 0111). */
  private static void add(short[] counts, short[] sums, short[] highSums) {
    for (int i = 0; i < counts.length; i++) {
      sums[i] += counts[i];
      // the signed high byte, and 256 where the sign is set
      highSums[i] += (counts[i] >> 8) - (counts[i] >> 15 << 8);
    }
  }

  private void moveToInts() {
    int[] all = earlier == null ? new int[sums.length] : earlier;
    for (int i = 0; i < all.length; i++) {
      all[i] += sumInShorts(i);
    }
    earlier = all;
    forget(0, sums.length);
    imagesInShorts = 0;
  }

  /** How many images have been added since the last reset. */
  public int images() {
    return images;
  }

  /** The sum of one pixel. */
  public int sumAt(int pixel) {
    return earlier == null ? sumInShorts(pixel) : earlier[pixel] + sumInShorts(pixel);
  }

  private int sumInShorts(int pixel) {
    int high = (highSums[pixel] & 0xFFFF) << 8;
    return high + (sums[pixel] - high & 0xFFFF);
  }

  /** Forgets all images. */
  public void reset() {
    if (images > 0) {
      forget(0, sums.length);
      startAfresh();
    }
  }

  private void forget(int from, int to) {
    Arrays.fill(sums, from, to, (short) 0);
    Arrays.fill(highSums, from, to, (short) 0);
  }

  private void startAfresh() {
    if (earlier != null) {
      Arrays.fill(earlier, 0);
    }
    images = 0;
    imagesInShorts = 0;
  }

  /**
   * Gives what the images lie above another on the mean, (sum - images x offset) x scale / images;
   * and forgets them. Needs at least one image.
   *
   * @param offsets one count for each pixel
   * @param mean one value for each pixel
   */
  void takeMeansAbove(short[] offsets, double scale, float[] mean) {
    double each = scale / images;
    for (int from = 0; from < mean.length; from += TILE) {
      int to = Math.min(mean.length, from + TILE);
      meansAbove(offsets, each, mean, from, to);
      forget(from, to);
    }
    startAfresh();
  }

  /** Sums and offsets as often both fit an int, so does what is between. */
  private void meansAbove(short[] offsets, double each, float[] mean, int from, int to) {
    int n = images;
    for (int i = from; i < to; i++) {
      mean[i] = (float) ((sumAt(i) - n * (offsets[i] & 0xFFFF)) * each);
    }
  }
}
