package railglow.journal;

import java.nio.ByteBuffer;
import java.util.Arrays;
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
  private static final int MOST_ZEROS = 12;
  private static final int LEFT = 0;
  private static final int BEFORE = 1;
  private static final int MEAN = 2;

  /** Sums of so many codes of 16 bits stay below 2^31. */
  private static final int BLOCK = 1 << 14;

  private static final int TRIED_EVERY = 4;

  private final int width;
  private final int height;
  private final short[] before;
  private final int[] means;
  private final int[] codes;
  private final int[] better;
  private int leaning;
  private final BitsOut bits;
  private final BitsIn from = new BitsIn();

  RiceCodec(int width, int height) {
    this.width = width;
    this.height = height;
    before = new short[Math.multiplyExact(width, height)];
    means = new int[before.length];
    codes = new int[width + 1];
    better = new int[height];
    bits = new BitsOut(maxBytes());
  }

  @Override
  public String word() {
    return WORD;
  }

  @Override
  public int maxBytes() {
    return Math.addExact(Math.multiplyExact(before.length, 2), height + 8);
  }

  @Override
  public void encode(Samples frame, boolean independent, ByteBuffer out) {
    short[] counts = ((CountSamples) frame).counts();
    bits.begin();
    for (int row = 0; row < height; row++) {
      int start = row * width;
      if (independent) {
        row(counts, start, LEFT, codesFromLeft(counts, start));
        startMeans(counts, start);
      } else {
        leaningRow(counts, row);
      }
    }
    leaning = independent ? 0 : leaning + 1;
    System.arraycopy(counts, 0, before, 0, counts.length);
    out.put(bits.bytes(), 0, bits.end());
  }

  /** Each row tries both predictions now and then, by turns, and keeps to the better one. */
  private void leaningRow(short[] counts, int row) {
    int start = row * width;
    if ((leaning + row) % TRIED_EVERY == 0) {
      long fromBefore = codesFromBefore(counts, start);
      long fromMean = codesFromMean(counts, start);
      better[row] = fromMean < fromBefore ? MEAN : BEFORE;
    }
    if (better[row] == MEAN) {
      row(counts, start, MEAN, codesFromMean(counts, start));
    } else {
      row(counts, start, BEFORE, codesFromBefore(counts, start));
    }
    moveMeans(counts, start);
  }

  private long codesFromBefore(short[] counts, int start) {
    long sum = 0;
    for (int block = 0; block < width; block += BLOCK) {
      int end = Math.min(width, block + BLOCK);
      int part = 0;
      for (int i = block; i < end; i++) {
        int u = unsigned(counts[start + i] - before[start + i]);
        codes[i] = u;
        part += u;
      }
      sum += part;
    }
    return sum;
  }

  private long codesFromMean(short[] counts, int start) {
    long sum = 0;
    for (int block = 0; block < width; block += BLOCK) {
      int end = Math.min(width, block + BLOCK);
      int part = 0;
      for (int i = block; i < end; i++) {
        int u = unsigned(counts[start + i] - (means[start + i] + 128 >> 8));
        codes[i] = u;
        part += u;
      }
      sum += part;
    }
    return sum;
  }

  /** Writes the row that {@link #codes} hold. */
  private void row(short[] counts, int start, int predictor, long sum) {
    int k = parameter(sum);
    if (!fits(sum, k)) {
      bits.put(PLAIN, 8);
      for (int i = 0; i < width; i++) {
        bits.put(counts[start + i] & 0xFFFF, 16);
      }
      return;
    }
    bits.put(predictor << 4 | k, 8);
    bits.putRice(codes, width, k, MOST_ZEROS);
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
    long atMost = zeros + (1L + k) * width + 16 * (zeros / MOST_ZEROS);
    return atMost < 16L * width || length(k) < 16L * width;
  }

  private long length(int k) {
    long length = 0;
    for (int i = 0; i < width; i++) {
      int zeros = codes[i] >>> k;
      length += zeros < MOST_ZEROS ? zeros + 1 + k : MOST_ZEROS + 17;
    }
    return length;
  }

  private long codesFromLeft(short[] counts, int start) {
    long sum = 0;
    int left = start == 0 ? 0 : counts[start - width];
    for (int i = 0; i < width; i++) {
      codes[i] = unsigned(counts[start + i] - left);
      sum += codes[i];
      left = counts[start + i];
    }
    return sum;
  }

  private static int unsigned(int difference) {
    int d = (short) difference;
    return d << 1 ^ d >> 31;
  }

  private static int signed(int code) {
    return code >>> 1 ^ -(code & 1);
  }

  private void startMeans(short[] counts, int start) {
    for (int i = start; i < start + width; i++) {
      means[i] = (counts[i] & 0xFFFF) << 8;
    }
  }

  private void moveMeans(short[] counts, int start) {
    for (int i = start; i < start + width; i++) {
      means[i] += ((counts[i] & 0xFFFF) << 8) - means[i] >> 3;
    }
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
      decodeRow(counts, row * width, predictor, head & 15);
      if (independent) {
        startMeans(counts, row * width);
      } else {
        moveMeans(counts, row * width);
      }
    }
    if (from.overrun()) {
      throw new JournalException("the bytes end before the frame does");
    }
    System.arraycopy(counts, 0, before, 0, counts.length);
  }

  private void decodeRow(short[] counts, int start, int predictor, int k) throws JournalException {
    if (k == PLAIN) {
      for (int i = start; i < start + width; i++) {
        counts[i] = (short) from.take(16);
      }
      return;
    }
    from.takeRice(codes, width, k, MOST_ZEROS);
    if (predictor == BEFORE) {
      for (int i = 0; i < width; i++) {
        counts[start + i] = (short) (before[start + i] + signed(codes[i]));
      }
    } else if (predictor == MEAN) {
      for (int i = 0; i < width; i++) {
        counts[start + i] = (short) ((means[start + i] + 128 >> 8) + signed(codes[i]));
      }
    } else {
      int left = start == 0 ? 0 : counts[start - width];
      for (int i = 0; i < width; i++) {
        left += signed(codes[i]);
        counts[start + i] = (short) left;
      }
    }
  }
}
