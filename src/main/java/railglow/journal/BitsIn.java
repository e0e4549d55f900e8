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

  /** So many pairs are sure to be known after the word was filled up. */
  private static final int PAIRS_A_FILL = 56 / PAIR_BITS;

  /** Where a table's entry has its parts; a number of {@link #PAIR_BITS} bits fits in 13. */
  private static final int LENGTH = 15;

  private static final int COUNT_AT = 4;
  private static final int FIRST_AT = 6;
  private static final int SECOND_AT = 19;
  private static final int NUMBER = (1 << 13) - 1;

  /** By k, made when first used. */
  private final int[][] tables = new int[15][];

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
  void takeRice(short[] into, int count, int k) throws JournalException {
    int[] pairs = pairsOf(k);
    int i = 0;
    while (i < count) {
      i = takePairs(into, i, count - 2 * PAIRS_A_FILL, pairs);
      // What stopped it, a long number or the last few of the row, goes the slow way.
      if (i < count) {
        into[i++] = (short) takeOne(k);
      }
    }
  }

  /**
   * Looks numbers up two at a time, and fills up the word only as often as it must: every number
   * waits for the length of the one before, and the less is done between them the better.
   *
   * @param last place from which a whole fill of pairs can be taken
   * @return the place of the next number, which is a long one or lies after the last
   */
  private int takePairs(short[] into, int first, int last, int[] pairs) {
    // The fields as locals: the loop keeps them in registers.
    byte[] from = bytes;
    int end = this.end;
    int at = position;
    long bits = top;
    int known = held;
    int i = first;
    boolean usual = true;
    while (usual && i <= last) {
      bits |= (long) LONGS.get(from, Math.min(at, end)) >>> known;
      at += 63 - known >>> 3;
      known |= 56;
      for (int n = 0; n < PAIRS_A_FILL; n++) {
        int pair = pairs[(int) (bits >>> 64 - PAIR_BITS)];
        if (pair == 0) {
          usual = false;
          break;
        }
        int length = pair & LENGTH;
        bits <<= length;
        known -= length;
        into[i] = (short) (pair >>> FIRST_AT & NUMBER);
        into[i + 1] = (short) (pair >>> SECOND_AT);
        i += pair >>> COUNT_AT & 3;
      }
    }
    position = at;
    top = bits;
    held = known;
    return i;
  }

  private int takeOne(int k) throws JournalException {
    fill();
    int zeros = Long.numberOfLeadingZeros(top);
    if (zeros > BitsOut.MOST_ZEROS) {
      throw new JournalException("the bits of a pixel make no sense");
    }
    top <<= zeros + 1;
    held -= zeros + 1;
    if (zeros == BitsOut.MOST_ZEROS) {
      return take(16);
    }
    return k == 0 ? zeros : zeros << k | take(k);
  }

  private int[] pairsOf(int k) {
    if (tables[k] == null) {
      tables[k] = pairs(k);
    }
    return tables[k];
  }

  /**
   * What any next bits hold: how long it is, how many whole numbers, the first and the second of
   * them, in 4, 2, 13 and 13 bits. 0 when not even the first ends in them.
   */
  private static int[] pairs(int k) {
    int[] pairs = new int[1 << PAIR_BITS];
    for (int bits = 0; bits < pairs.length; bits++) {
      int first = number(bits, k, 0);
      if (first >= 0) {
        int length = first & 0xFF;
        int second = number(bits, k, length);
        int one = length | 1 << COUNT_AT | first >>> 8 << FIRST_AT;
        int two = second & 0xFF | 2 << COUNT_AT | first >>> 8 << FIRST_AT;
        pairs[bits] = second < 0 ? one : two | second >>> 8 << SECOND_AT;
      }
    }
    return pairs;
  }

  /** A number after so many bits, with the bits up to its end in the low 8; else below 0. */
  private static int number(int bits, int k, int from) {
    int zeros = Integer.numberOfLeadingZeros(bits << 32 - PAIR_BITS + from);
    int end = from + zeros + 1 + k;
    if (end > PAIR_BITS) {
      return -1;
    }
    int low = bits >>> PAIR_BITS - end & (1 << k) - 1;
    return (zeros << k | low) << 8 | end;
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
