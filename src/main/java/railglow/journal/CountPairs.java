package railglow.journal;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.IntBuffer;
import java.nio.ShortBuffer;

/**
 * Rows of 16-bit counts as ints of two, the first in the low half: Java 17 makes vector code of
 * loops over ints, and not of those that turn shorts into ints (decision 0096). Where a row's width
 * is odd, 0 stands beside its last count. Not thread-safe.
 */
final class CountPairs {
  private final int width;
  private final ShortBuffer counts;
  private final IntBuffer pairs;

  /** For rows of so many counts. */
  CountPairs(int width) {
    this.width = width;
    ByteBuffer bytes = ByteBuffer.allocate(4 * pairsOf(width)).order(ByteOrder.LITTLE_ENDIAN);
    counts = bytes.asShortBuffer();
    pairs = bytes.asIntBuffer();
  }

  /** How many pairs so many counts make. */
  static int pairsOf(int width) {
    return width + 1 >> 1;
  }

  void pack(short[] from, int start, int[] into) {
    counts.put(0, from, start, width);
    pairs.get(0, into, 0, into.length);
  }

  void unpack(int[] from, short[] into, int start) {
    pairs.put(0, from, 0, from.length);
    counts.get(0, into, start, width);
  }
}
