package railglow.journal;

import railglow.thermal.CountPairs;

/**
 * What a frame's counts were foretold from: its own left neighbours, the frame before, and the
 * running mean of each pixel; as {@link RiceCodec} says. A count's difference from what was
 * foretold is a code: 2d, or -2d-1 where it is negative.
 *
 * <p>Counts and codes go in pairs ({@link CountPairs}); the means of even and odd pixels lie apart;
 * each row has arrays of its own: so laid out, the loops become vector code. Not thread-safe.
 */
final class PredictedRows {
  /** Sums of so many pairs of codes stay below 2^31. */
  private static final int BLOCK = 1 << 14;

  private final int width;
  private final CountPairs pairs;
  private int[][] now;
  private int[][] before;
  private final int[][] evenMeans;
  private final int[][] oddMeans;

  PredictedRows(int width, int height) {
    this.width = width;
    pairs = new CountPairs(width);
    int across = CountPairs.of(width);
    now = new int[height][across];
    before = new int[height][across];
    evenMeans = new int[height][across];
    oddMeans = new int[height][across];
  }

  /** Takes in a row of the frame that is being written. */
  void take(int row, short[] counts) {
    pairs.pack(counts, row * width, width, now[row]);
  }

  /** The sum of the codes of a row against the frame before. */
  long codesFromBefore(int row, int[] codes) {
    code(now[row], before[row], codes);
    return sum(codes);
  }

  /** The sum of the codes of a row against its running means. */
  long codesFromMean(int row, int[] codes) {
    code(now[row], evenMeans[row], oddMeans[row], codes);
    return sum(codes);
  }

  /** The sum of the codes of a row, each against its left neighbour. */
  long codesFromLeft(int row, int[] codes) {
    int left = above(row);
    for (int i = 0; i < codes.length; i++) {
      int both = now[row][i];
      int odd = 2 * i + 1 < width ? code((both >>> 16) - both) : 0;
      codes[i] = code(both - left) | odd << 16;
      left = both >>> 16;
    }
    return sum(codes);
  }

  /** Gives back the row that has these codes against the frame before. */
  void countsFromBefore(int row, int[] codes, short[] counts) {
    decode(codes, before[row], now[row]);
    pairs.unpack(now[row], counts, row * width, width);
  }

  /** Gives back the row that has these codes against its running means. */
  void countsFromMean(int row, int[] codes, short[] counts) {
    decode(codes, evenMeans[row], oddMeans[row], now[row]);
    pairs.unpack(now[row], counts, row * width, width);
  }

  /** Gives back the row that has these codes, each against its left neighbour. */
  void countsFromLeft(int row, int[] codes, short[] counts) {
    int left = above(row);
    for (int i = 0; i < codes.length; i++) {
      int even = left + difference(codes[i] & 0xFFFF);
      left = even + difference(codes[i] >>> 16);
      now[row][i] = even & 0xFFFF | left << 16;
    }
    pairs.unpack(now[row], counts, row * width, width);
  }

  /** The pixel above a row's first. */
  private int above(int row) {
    return row == 0 ? 0 : now[row - 1][0];
  }

  /** Lets the means follow the row as it is now. */
  void moveMeans(int row) {
    move(evenMeans[row], oddMeans[row], now[row]);
  }

  /** The means become the row as it is now. */
  void startMeans(int row) {
    for (int i = 0; i < now[row].length; i++) {
      evenMeans[row][i] = (now[row][i] & 0xFFFF) << 8;
      oddMeans[row][i] = now[row][i] >>> 16 << 8;
    }
  }

  /** All rows were taken in or given back: this frame becomes the one before. */
  void next() {
    int[][] oldest = before;
    before = now;
    now = oldest;
  }

  private static int code(int difference) {
    int d = (short) difference;
    return d << 1 ^ d >> 31;
  }

  private static int difference(int code) {
    return code >>> 1 ^ -(code & 1);
  }

  // In the loops below all is written out: they must stay vector code (decision 0096).

  private static void code(int[] counts, int[] before, int[] codes) {
    for (int i = 0; i < codes.length; i++) {
      int d = counts[i] - before[i] << 16 >> 16;
      int e = (counts[i] >>> 16) - (before[i] >>> 16) << 16 >> 16;
      codes[i] = d << 1 ^ d >> 31 | (e << 1 ^ e >> 31) << 16;
    }
  }

  private static void code(int[] counts, int[] evenMeans, int[] oddMeans, int[] codes) {
    for (int i = 0; i < codes.length; i++) {
      int d = counts[i] - (evenMeans[i] + 128 >> 8) << 16 >> 16;
      int e = (counts[i] >>> 16) - (oddMeans[i] + 128 >> 8) << 16 >> 16;
      codes[i] = d << 1 ^ d >> 31 | (e << 1 ^ e >> 31) << 16;
    }
  }

  private static void decode(int[] codes, int[] before, int[] counts) {
    for (int i = 0; i < codes.length; i++) {
      int d = codes[i] >>> 1 & 0x7FFF ^ -(codes[i] & 1);
      int e = codes[i] >>> 17 ^ -(codes[i] >>> 16 & 1);
      counts[i] = before[i] + d & 0xFFFF | (before[i] >>> 16) + e << 16;
    }
  }

  private static void decode(int[] codes, int[] evenMeans, int[] oddMeans, int[] counts) {
    for (int i = 0; i < codes.length; i++) {
      int d = codes[i] >>> 1 & 0x7FFF ^ -(codes[i] & 1);
      int e = codes[i] >>> 17 ^ -(codes[i] >>> 16 & 1);
      counts[i] = (evenMeans[i] + 128 >> 8) + d & 0xFFFF | (oddMeans[i] + 128 >> 8) + e << 16;
    }
  }

  private static void move(int[] evenMeans, int[] oddMeans, int[] counts) {
    for (int i = 0; i < counts.length; i++) {
      evenMeans[i] += ((counts[i] & 0xFFFF) << 8) - evenMeans[i] >> 3;
      oddMeans[i] += (counts[i] >>> 16 << 8) - oddMeans[i] >> 3;
    }
  }

  private static long sum(int[] codes) {
    long sum = 0;
    for (int block = 0; block < codes.length; block += BLOCK) {
      sum += Integer.toUnsignedLong(sum(codes, block, Math.min(codes.length, block + BLOCK)));
    }
    return sum;
  }

  private static int sum(int[] codes, int from, int to) {
    int sum = 0;
    for (int i = from; i < to; i++) {
      sum += (codes[i] & 0xFFFF) + (codes[i] >>> 16);
    }
    return sum;
  }
}
