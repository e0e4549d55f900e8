package railglow.journal;

import java.lang.invoke.MethodHandles;
import java.lang.invoke.VarHandle;
import java.nio.ByteOrder;

/** Writes numbers of any length up to 32 bits, most significant bit first. Not thread-safe. */
final class BitsOut {
  private static final VarHandle INTS =
      MethodHandles.byteArrayViewVarHandle(int[].class, ByteOrder.BIG_ENDIAN);

  private final byte[] bytes;
  private int position;
  private long window;
  private int held;

  /** Room for so many bytes and the word that is being filled. */
  BitsOut(int mostBytes) {
    bytes = new byte[mostBytes + 8];
  }

  void begin() {
    position = 0;
    window = 0;
    held = 0;
  }

  /**
   * Adds the low bits of a value; the bits above them must be 0.
   *
   * @param length 1 to 32
   */
  void put(int value, int length) {
    window = window << length | value & 0xFFFFFFFFL;
    held += length;
    if (held >= 32) {
      held -= 32;
      INTS.set(bytes, position, (int) (window >>> held));
      position += 4;
    }
  }

  /** Fills the last byte with zeros. */
  int end() {
    int rest = (held + 7) / 8;
    int word = (int) (window << 32 - held);
    for (int i = 0; i < rest; i++) {
      bytes[position++] = (byte) (word >>> 24 - 8 * i);
    }
    held = 0;
    return position;
  }

  byte[] bytes() {
    return bytes;
  }
}
