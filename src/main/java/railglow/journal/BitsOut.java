package railglow.journal;

import java.lang.invoke.MethodHandles;
import java.lang.invoke.VarHandle;
import java.nio.ByteOrder;
import java.util.concurrent.atomic.AtomicReferenceArray;

/**
 * Writes numbers of any length up to 32 bits, most significant bit first. What is not a whole byte
 * yet stands at the low end of a word that is written out every time, so that no branch hangs on
 * how many bits a number took (decisions 0029 and 0112). Not thread-safe.
 */
final class BitsOut {
  private static final VarHandle LONGS =
      MethodHandles.byteArrayViewVarHandle(long[].class, ByteOrder.BIG_ENDIAN);

  /** From so many zeros on a number is written as it is. */
  static final int MOST_ZEROS = 12;

  /** Of a pair of numbers: bits that are set only where one of them is 256 or more. */
  private static final int NOT_IN_TABLE = 0xFF00FF00;

  /**
   * A table's entry is a pair's bits, at most 26, and below them, in six bits, how many: as many as
   * the shift of a long looks at, so that an entry serves as the number of its places.
   */
  private static final int LENGTH_BITS = 6;

  private static final int LENGTH = (1 << LENGTH_BITS) - 1;
  private static final int MOST_BITS = 32 - LENGTH_BITS;
  private static final int TOO_LONG = 32;

  /** By k, made when first used, for all writers. */
  private static final AtomicReferenceArray<int[]> TABLES = new AtomicReferenceArray<>(15);

  private final byte[] bytes;
  private int position;

  /** Its low bits are those that were not whole bytes; what stands above them is of the past. */
  private long word;

  private int held;

  /** Room for so many bytes and the word that is being filled. */
  BitsOut(int mostBytes) {
    bytes = new byte[mostBytes + 8];
  }

  void begin() {
    position = 0;
    held = 0;
  }

  /**
   * Adds the low bits of a value; the bits above them must be 0.
   *
   * @param length 1 to 32
   */
  void put(int value, int length) {
    word = word << length | value & 0xFFFFFFFFL;
    int bits = held + length;
    LONGS.set(bytes, position, word << 64 - bits);
    position += bits >>> 3;
    held = bits & 7;
  }

  /**
   * Adds numbers in Golomb-Rice code: u >> k zeros, a one, the k low bits; after {@link
   * #MOST_ZEROS} zeros and a one the 16 bits of the number itself.
   *
   * @param codes the numbers by two, the first in the low half
   * @param count how many numbers
   * @param k 0 to 14
   */
  void putRice(int[] codes, int count, int k) {
    int[] table = tableOf(k);
    // The fields as locals: the loop keeps them in registers.
    byte[] into = bytes;
    int at = position;
    long all = word;
    int bits = held;
    int pairs = count / 2;
    int i = 0;
    // Two pairs at a time: they fit into the word, whatever it holds already.
    for (; i + 1 < pairs; i += 2) {
      int a = codes[i];
      int b = codes[i + 1];
      int e = table[(a | a >>> 8) & 0xFFFF];
      int f = table[(b | b >>> 8) & 0xFFFF];
      if (((a | b) & NOT_IN_TABLE | (e | f) & TOO_LONG) != 0) {
        position = at;
        word = all;
        held = bits;
        putPair(a, k);
        putPair(b, k);
        at = position;
        all = word;
        bits = held;
        continue;
      }
      int length = e + f & LENGTH;
      all = all << length | (long) (e >>> LENGTH_BITS) << f | f >>> LENGTH_BITS;
      bits += length;
      LONGS.set(into, at, all << 64 - bits);
      at += bits >>> 3;
      bits &= 7;
    }
    position = at;
    word = all;
    held = bits;
    for (; i < pairs; i++) {
      putPair(codes[i], k);
    }
    if (count % 2 != 0) {
      putOne(codes[pairs] & 0xFFFF, k);
    }
  }

  private void putPair(int pair, int k) {
    putOne(pair & 0xFFFF, k);
    putOne(pair >>> 16, k);
  }

  private void putOne(int u, int k) {
    int zeros = u >>> k;
    if (zeros < MOST_ZEROS) {
      put(1 << k | u & (1 << k) - 1, zeros + 1 + k);
    } else {
      put(1 << 16 | u, MOST_ZEROS + 17);
    }
  }

  private static int[] tableOf(int k) {
    int[] table = TABLES.get(k);
    if (table == null) {
      table = table(k);
      TABLES.set(k, table);
    }
    return table;
  }

  /** An entry for any two numbers below 256. */
  private static int[] table(int k) {
    int[] table = new int[1 << 16];
    for (int pair = 0; pair < table.length; pair++) {
      int u = pair & 0xFF;
      int v = pair >>> 8;
      int end = (v >>> k) + 1 + k;
      int length = (u >>> k) + 1 + k + end;
      int pattern = (1 << k | u & (1 << k) - 1) << end | 1 << k | v & (1 << k) - 1;
      boolean usual = u >>> k < MOST_ZEROS && v >>> k < MOST_ZEROS && length <= MOST_BITS;
      table[pair] = usual ? pattern << LENGTH_BITS | length : TOO_LONG;
    }
    return table;
  }

  /** Fills the last byte with zeros. */
  int end() {
    if (held > 0) {
      bytes[position++] = (byte) (word << 8 - held);
    }
    held = 0;
    return position;
  }

  byte[] bytes() {
    return bytes;
  }
}
