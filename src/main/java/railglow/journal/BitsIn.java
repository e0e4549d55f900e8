package railglow.journal;

import java.lang.invoke.MethodHandles;
import java.lang.invoke.VarHandle;
import java.nio.ByteOrder;

/** Reads what {@link BitsOut} wrote; past the end come zeros. Not thread-safe. */
final class BitsIn {
  private static final VarHandle INTS =
      MethodHandles.byteArrayViewVarHandle(int[].class, ByteOrder.BIG_ENDIAN);

  private final byte[] bytes;
  private final int end;
  private int position;
  private long window;
  private int held;

  /** The bytes before {@code end}; the array must be at least 4 longer. */
  BitsIn(byte[] bytes, int end) {
    this.bytes = bytes;
    this.end = end;
  }

  /** How many zeros come before the next one, which is taken too; more than most are an error. */
  int zeros(int most) throws JournalException {
    fill();
    int zeros = Long.numberOfLeadingZeros(window << 64 - held);
    if (held == 0 || zeros > most) {
      throw new JournalException("the bits of a pixel make no sense");
    }
    held -= zeros + 1;
    return zeros;
  }

  /**
   * The next bits as a number.
   *
   * @param length 0 to 32
   */
  int take(int length) {
    if (length == 0) {
      return 0;
    }
    fill();
    held -= length;
    return (int) (window >>> held & (1L << length) - 1);
  }

  /** Whether more was taken than was there. */
  boolean overrun() {
    return position - held / 8 > end;
  }

  private void fill() {
    if (held < 32) {
      int word = position + 4 <= bytes.length ? (int) INTS.get(bytes, position) : 0;
      window = window << 32 | word & 0xFFFFFFFFL;
      position += 4;
      held += 32;
    }
  }
}
