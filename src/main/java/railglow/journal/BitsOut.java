package railglow.journal;

import java.lang.invoke.MethodHandles;
import java.lang.invoke.VarHandle;
import java.nio.ByteOrder;

/**
 * Writes numbers of any length up to 32 bits, most significant bit first. What is not a whole byte
 * yet stands at the top of a word that is written out every time, so that no branch hangs on how
 * many bits a number took (decision 0029). Not thread-safe.
 */
final class BitsOut {
  private static final VarHandle LONGS =
      MethodHandles.byteArrayViewVarHandle(long[].class, ByteOrder.BIG_ENDIAN);

  private final byte[] bytes;
  private int position;
  private long top;
  private int held;

  /** Room for so many bytes and the word that is being filled. */
  BitsOut(int mostBytes) {
    bytes = new byte[mostBytes + 8];
  }

  void begin() {
    position = 0;
    top = 0;
    held = 0;
  }

  /**
   * Adds the low bits of a value; the bits above them must be 0.
   *
   * @param length 1 to 32
   */
  void put(int value, int length) {
    long word = top | (value & 0xFFFFFFFFL) << 64 - held - length;
    LONGS.set(bytes, position, word);
    int bits = held + length;
    position += bits >>> 3;
    top = word << (bits & 56);
    held = bits & 7;
  }

  /**
   * Adds numbers in Golomb-Rice code: u >> k zeros, a one, the k low bits; after so many zeros and
   * a one the 16 bits of the number itself.
   *
   * @param codes 0 to 65535, as many as {@code count}
   * @param k 0 to 14
   * @param mostZeros at most 13
   */
  void putRice(int[] codes, int count, int k, int mostZeros) {
    // The fields as locals: the loop keeps them in registers.
    byte[] into = bytes;
    int at = position;
    long rest = top;
    int bits = held;
    int one = 1 << k;
    int i = 0;
    for (; i + 1 < count; i += 2) {
      int u = codes[i];
      int v = codes[i + 1];
      int zeros = u >>> k;
      int moreZeros = v >>> k;
      if (zeros >= mostZeros || moreZeros >= mostZeros) {
        position = at;
        top = rest;
        held = bits;
        putOne(u, k, mostZeros);
        putOne(v, k, mostZeros);
        at = position;
        rest = top;
        bits = held;
        continue;
      }
      // Two at a time: what each leaves to the next is what the loop waits for.
      int length = moreZeros + 1 + k;
      long both = (long) (one | u & one - 1) << length | (one | v & one - 1);
      bits += zeros + 1 + k + length;
      rest |= both << 64 - bits;
      LONGS.set(into, at, rest);
      at += bits >>> 3;
      rest <<= bits & 56;
      bits &= 7;
    }
    position = at;
    top = rest;
    held = bits;
    if (i < count) {
      putOne(codes[i], k, mostZeros);
    }
  }

  private void putOne(int u, int k, int mostZeros) {
    int zeros = u >>> k;
    if (zeros < mostZeros) {
      put(1 << k | u & (1 << k) - 1, zeros + 1 + k);
    } else {
      put(1 << 16 | u, mostZeros + 17);
    }
  }

  /** Fills the last byte with zeros. */
  int end() {
    if (held > 0) {
      bytes[position++] = (byte) (top >>> 56);
    }
    top = 0;
    held = 0;
    return position;
  }

  byte[] bytes() {
    return bytes;
  }
}
