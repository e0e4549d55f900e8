package railglow.journal;

import java.nio.ByteBuffer;
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

  private final int width;
  private final int height;
  private final short[] before;
  private final int[] means;
  private final int[][] codes;
  private final BitsOut bits;

  RiceCodec(int width, int height) {
    this.width = width;
    this.height = height;
    before = new short[Math.multiplyExact(width, height)];
    means = new int[before.length];
    codes = new int[3][width];
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
      int predictor;
      long sum;
      if (independent) {
        predictor = LEFT;
        sum = codesFromLeft(counts, start);
      } else {
        long fromBefore = codesFromBefore(counts, start);
        long fromMean = codesFromMean(counts, start);
        predictor = fromMean < fromBefore ? MEAN : BEFORE;
        sum = Math.min(fromBefore, fromMean);
      }
      row(counts, start, predictor, parameter(sum));
    }
    out.put(bits.bytes(), 0, bits.end());
    remember(counts, independent);
  }

  /** The k for which codes of this sum are short: 2^k near the mean. */
  private int parameter(long sum) {
    int k = 0;
    while (k < PLAIN - 1 && (long) width << k + 1 <= sum + width / 2) {
      k++;
    }
    return k;
  }

  private void row(short[] counts, int start, int predictor, int k) {
    int[] u = codes[predictor];
    long length = 0;
    for (int i = 0; i < width; i++) {
      int zeros = u[i] >>> k;
      length += zeros < MOST_ZEROS ? zeros + 1 + k : MOST_ZEROS + 17;
    }
    if (length >= 16L * width) {
      bits.put(PLAIN, 8);
      for (int i = 0; i < width; i++) {
        bits.put(counts[start + i] & 0xFFFF, 16);
      }
      return;
    }
    bits.put(predictor << 4 | k, 8);
    int low = (1 << k) - 1;
    for (int i = 0; i < width; i++) {
      int zeros = u[i] >>> k;
      if (zeros < MOST_ZEROS) {
        bits.put(1 << k | u[i] & low, zeros + 1 + k);
      } else {
        bits.put(1 << 16 | u[i], MOST_ZEROS + 17);
      }
    }
  }

  private long codesFromLeft(short[] counts, int start) {
    int[] u = codes[LEFT];
    long sum = 0;
    int left = start == 0 ? 0 : counts[start - width];
    for (int i = 0; i < width; i++) {
      u[i] = unsigned(counts[start + i] - left);
      sum += u[i];
      left = counts[start + i];
    }
    return sum;
  }

  private long codesFromBefore(short[] counts, int start) {
    int[] u = codes[BEFORE];
    long sum = 0;
    for (int i = 0; i < width; i++) {
      u[i] = unsigned(counts[start + i] - before[start + i]);
      sum += u[i];
    }
    return sum;
  }

  private long codesFromMean(short[] counts, int start) {
    int[] u = codes[MEAN];
    long sum = 0;
    for (int i = 0; i < width; i++) {
      u[i] = unsigned(counts[start + i] - (means[start + i] + 128 >> 8));
      sum += u[i];
    }
    return sum;
  }

  private static int unsigned(int difference) {
    int d = (short) difference;
    return d << 1 ^ d >> 31;
  }

  private void remember(short[] counts, boolean independent) {
    System.arraycopy(counts, 0, before, 0, counts.length);
    if (independent) {
      for (int i = 0; i < counts.length; i++) {
        means[i] = (counts[i] & 0xFFFF) << 8;
      }
    } else {
      for (int i = 0; i < counts.length; i++) {
        means[i] += ((counts[i] & 0xFFFF) << 8) - means[i] >> 3;
      }
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
    java.util.Arrays.fill(bytes, length, length + 8, (byte) 0);
    BitsIn from = new BitsIn(bytes, length);
    for (int row = 0; row < height; row++) {
      int head = from.take(8);
      int predictor = head >>> 4;
      if (predictor > MEAN || independent && predictor != LEFT) {
        throw new JournalException("row " + row + " names a prediction that there is not");
      }
      decodeRow(from, counts, row * width, predictor, head & 15);
    }
    if (from.overrun()) {
      throw new JournalException("the bytes end before the frame does");
    }
    remember(counts, independent);
  }

  private void decodeRow(BitsIn from, short[] counts, int start, int predictor, int k)
      throws JournalException {
    int left = start == 0 ? 0 : counts[start - width];
    for (int i = start; i < start + width; i++) {
      if (k == PLAIN) {
        counts[i] = (short) from.take(16);
        continue;
      }
      int zeros = from.zeros(MOST_ZEROS);
      int u = zeros < MOST_ZEROS ? zeros << k | from.take(k) : from.take(16);
      int predicted =
          predictor == LEFT ? left : predictor == BEFORE ? before[i] : means[i] + 128 >> 8;
      counts[i] = (short) (predicted + (u >>> 1 ^ -(u & 1)));
      left = counts[i];
    }
  }
}
