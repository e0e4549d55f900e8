package railglow.journal;

import java.nio.ByteBuffer;
import java.util.Arrays;
import railglow.thermal.CountPairs;
import railglow.thermal.CountSamples;
import railglow.thermal.Samples;

/**
 * Counts as differences from a prediction, in Golomb-Rice code (Rice and Plaunt 1971). Camera noise
 * is what a frame does not share with those before it, and this code comes near its entropy at a
 * fraction of the work of a dictionary coder.
 *
 * <p>Each row starts with a byte: its low four bits are k, or 15 for a row of plain 16-bit counts;
 * the next two say what predicts a pixel: 0 its left neighbour (the first pixel: the one above it,
 * 0 in the first row), 1 the pixel in the frame before, 2 the running mean of the pixel. A
 * difference d modulo 65536, taken as signed, becomes u = 2d or -2d-1; then follow u >> k zeros, a
 * one, and the k low bits of u. After 12 zeros and a one follow the 16 bits of u itself. Bits fill
 * bytes from the most significant; the frame's last byte is filled with zeros.
 *
 * <p>The running mean has 8 binary places, starts as the pixel of an independent frame, and moves
 * by an eighth of the difference, rounded down, after each frame.
 */
final class RiceCodec implements FrameCodec {
  static final String WORD = "rice";
  private static final int PLAIN = 15;
  private static final int LEFT = 0;
  private static final int BEFORE = 1;
  private static final int MEAN = 2;

  private static final int TRIED_EVERY = 4;

  private final int width;
  private final int height;
  private final PredictedRows rows;
  private final CountPairs pairs;

  /** Codes of a row, by two. */
  private final int[] codes;

  /** Codes of a row as they are read, and room for one more. */
  private final short[] read;

  private final int[] better;
  private int leaning;
  private final BitsOut bits;
  private final BitsIn from = new BitsIn();

  RiceCodec(int width, int height) {
    this.width = width;
    this.height = height;
    bits = new BitsOut(maxBytes());
    rows = new PredictedRows(width, height);
    pairs = new CountPairs(width);
    codes = new int[CountPairs.of(width)];
    read = new short[width + 1];
    better = new int[height];
  }

  @Override
  public String word() {
    return WORD;
  }

  @Override
  public int maxBytes() {
    return Math.addExact(Math.multiplyExact(Math.multiplyExact(width, height), 2), height + 8);
  }

  @Override
  public void encode(Samples frame, boolean independent, ByteBuffer out) {
    short[] counts = ((CountSamples) frame).counts();
    bits.begin();
    for (int row = 0; row < height; row++) {
      rows.take(row, counts);
      if (independent) {
        row(counts, row, LEFT, rows.codesFromLeft(row, codes));
        rows.startMeans(row);
      } else {
        leaningRow(counts, row);
        rows.moveMeans(row);
      }
    }
    leaning = independent ? 0 : leaning + 1;
    rows.next();
    out.put(bits.bytes(), 0, bits.end());
  }

  /** Each row tries both predictions now and then, by turns, and keeps to the better one. */
  private void leaningRow(short[] counts, int row) {
    if ((leaning + row) % TRIED_EVERY == 0) {
      long fromBefore = rows.codesFromBefore(row, codes);
      long fromMean = rows.codesFromMean(row, codes);
      better[row] = fromMean < fromBefore ? MEAN : BEFORE;
    }
    if (better[row] == MEAN) {
      row(counts, row, MEAN, rows.codesFromMean(row, codes));
    } else {
      row(counts, row, BEFORE, rows.codesFromBefore(row, codes));
    }
  }

  /** Writes the row that {@link #codes} hold. */
  private void row(short[] counts, int row, int predictor, long sum) {
    int k = parameter(sum);
    if (!fits(sum, k)) {
      bits.put(PLAIN, 8);
      for (int i = row * width; i < (row + 1) * width; i++) {
        bits.put(counts[i] & 0xFFFF, 16);
      }
      return;
    }
    bits.put(predictor << 4 | k, 8);
    bits.putRice(codes, width, k);
  }

  /** The k for which codes of this sum are short: 2^k near the mean. */
  private int parameter(long sum) {
    int k = 0;
    while (k < PLAIN - 1 && (long) width << k + 1 <= sum + width / 2) {
      k++;
    }
    return k;
  }

  /** Whether a row in code is shorter than its plain counts. */
  private boolean fits(long sum, int k) {
    long zeros = sum >> k;
    // A code too long for its zeros takes at most 16 bits more than they would, and 12 zeros of
    // them.
    long atMost = zeros + (1L + k) * width + 16 * (zeros / BitsOut.MOST_ZEROS);
    return atMost < 16L * width || length(k) < 16L * width;
  }

  private long length(int k) {
    long length = 0;
    for (int i = 0; i < width; i++) {
      int zeros = (codes[i >> 1] >>> 16 * (i & 1) & 0xFFFF) >>> k;
      length += zeros < BitsOut.MOST_ZEROS ? zeros + 1 + k : BitsOut.MOST_ZEROS + 17;
    }
    return length;
  }

  @Override
  public void decode(ByteBuffer in, boolean independent, Samples frame) throws JournalException {
    short[] counts = ((CountSamples) frame).counts();
    byte[] bytes = bits.bytes();
    int length = in.remaining();
    if (length > bytes.length - 8) {
      throw new JournalException(length + " bytes are more than a frame can have");
    }
    in.get(bytes, 0, length);
    Arrays.fill(bytes, length, length + 8, (byte) 0);
    from.begin(bytes, length);
    for (int row = 0; row < height; row++) {
      int head = from.take(8);
      int predictor = head >>> 4;
      if (predictor > MEAN || independent && predictor != LEFT) {
        throw new JournalException("row " + row + " names a prediction that there is not");
      }
      decodeRow(counts, row, predictor, head & 15);
      if (independent) {
        rows.startMeans(row);
      } else {
        rows.moveMeans(row);
      }
    }
    if (from.overrun()) {
      throw new JournalException("the bytes end before the frame does");
    }
    rows.next();
  }

  private void decodeRow(short[] counts, int row, int predictor, int k) throws JournalException {
    if (k == PLAIN) {
      for (int i = row * width; i < (row + 1) * width; i++) {
        counts[i] = (short) from.take(16);
      }
      rows.take(row, counts);
      return;
    }
    from.takeRice(read, width, k);
    pairs.pack(read, 0, width, codes);
    if (predictor == BEFORE) {
      rows.countsFromBefore(row, codes, counts);
    } else if (predictor == MEAN) {
      rows.countsFromMean(row, codes, counts);
    } else {
      rows.countsFromLeft(row, codes, counts);
    }
  }
}
