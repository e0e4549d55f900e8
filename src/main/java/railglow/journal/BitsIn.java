package railglow.journal;

import java.lang.invoke.MethodHandles;
import java.lang.invoke.VarHandle;
import java.nio.ByteOrder;

/**
 * Reads what {@link BitsOut} wrote; past the end come zeros. The next bits stand at the top of a
 * word that is filled up every time, without a branch. Not thread-safe.
 */
final class BitsIn {
  private static final VarHandle LONGS =
      MethodHandles.byteArrayViewVarHandle(long[].class, ByteOrder.BIG_ENDIAN);

  /** So many bits are looked up at once; fewer than so many zeros are an ordinary number's. */
  private static final int PAIR_BITS = 12;

  /** By k, made when first used. */
  private final long[][] tables = new long[15][];

  private byte[] bytes;
  private int end;
  private int position;
  private long top;
  private int held;

  /**
   * Starts anew.
   *
   * @param from the bytes before {@code newEnd}, and at least 8 more, which are 0
   */
  void begin(byte[] from, int newEnd) {
    bytes = from;
    end = newEnd;
    position = 0;
    top = 0;
    held = 0;
  }

  /**
   * The next bits as a number.
   *
   * @param length 1 to 32
   */
  int take(int length) {
    fill();
    int value = (int) (top >>> 64 - length);
    top <<= length;
    held -= length;
    return value;
  }

  /**
   * The next numbers in Golomb-Rice code; see {@link BitsOut#putRice}.
   *
   * @param into has room for one more
   * @throws JournalException when more zeros follow each other than there may be
   */
  void takeRice(int[] into, int count, int k, int mostZeros) throws JournalException {
    long[] pairs = pairsOf(k);
    // The fields as locals: the loop keeps them in registers.
    byte[] from = bytes;
    int last = end;
    int at = position;
    long bits = top;
    int known = held;
    int i = 0;
    while (i + 1 < count) {
      bits |= (long) LONGS.get(from, Math.min(at, last)) >>> known;
      at += 63 - known >>> 3;
      known |= 56;
      long pair = pairs[(int) (bits >>> 64 - PAIR_BITS)];
      int length = (int) pair & 0xFF;
      if (length == 0) {
        position = at;
        top = bits;
        held = known;
        into[i++] = takeOne(k, mostZeros);
        at = position;
        bits = top;
        known = held;
        continue;
      }
      into[i] = (int) (pair >>> 16) & 0xFFFF;
      into[i + 1] = (int) (pair >>> 32);
      i += (int) (pair >>> 8) & 0xFF;
      bits <<= length;
      known -= length;
    }
    position = at;
    top = bits;
    held = known;
    if (i < count) {
      into[i] = takeOne(k, mostZeros);
    }
  }

  private int takeOne(int k, int mostZeros) throws JournalException {
    fill();
    int zeros = Long.numberOfLeadingZeros(top);
    if (zeros > mostZeros) {
      throw new JournalException("the bits of a pixel make no sense");
    }
    top <<= zeros + 1;
    held -= zeros + 1;
    if (zeros == mostZeros) {
      return take(16);
    }
    return k == 0 ? zeros : zeros << k | take(k);
  }

  private long[] pairsOf(int k) {
    if (tables[k] == null) {
      tables[k] = pairs(k);
    }
    return tables[k];
  }

  /**
   * What any next bits hold: how long it is, how many whole numbers, the first and the second of
   * them, in 8, 8, 16 and 16 bits. 0 when not even the first ends in them.
   */
  private static long[] pairs(int k) {
    long[] pairs = new long[1 << PAIR_BITS];
    for (int bits = 0; bits < pairs.length; bits++) {
      long first = number(bits, k, 0);
      if (first >= 0) {
        int length = (int) first & 0xFF;
        long second = number(bits, k, length);
        pairs[bits] =
            second < 0
                ? length | 1 << 8 | first >>> 8 << 16
                : second & 0xFF | 2 << 8 | first >>> 8 << 16 | second >>> 8 << 32;
      }
    }
    return pairs;
  }

  /** A number after so many bits, with the bits up to its end in the low 8; else below 0. */
  private static long number(int bits, int k, int from) {
    int zeros = Integer.numberOfLeadingZeros(bits << 32 - PAIR_BITS + from);
    int end = from + zeros + 1 + k;
    if (end > PAIR_BITS) {
      return -1;
    }
    int low = bits >>> PAIR_BITS - end & (1 << k) - 1;
    return (long) (zeros << k | low) << 8 | end;
  }

  /** Whether more was taken than was there. */
  boolean overrun() {
    return position - held / 8 > end;
  }

  /** At least 56 bits are known afterwards. */
  private void fill() {
    top |= (long) LONGS.get(bytes, Math.min(position, end)) >>> held;
    position += 63 - held >>> 3;
    held |= 56;
  }
}
