package railglow.thermal;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.IntBuffer;
import java.nio.ShortBuffer;

/**
 * Stretches of 16-bit counts as ints of two, the first in the low half: Java 17 makes vector code
 * of loops over ints, and not of those that turn shorts into ints (decision 0096). Allocates
 * nothing but its own room. Not thread-safe.
 */
public final class CountPairs {
  private final ShortBuffer counts;
  private final IntBuffer pairs;

  /** For stretches of so many counts and shorter ones. */
  public CountPairs(int mostCounts) {
    ByteBuffer bytes = ByteBuffer.allocate(4 * of(mostCounts)).order(ByteOrder.LITTLE_ENDIAN);
    counts = bytes.asShortBuffer();
    pairs = bytes.asIntBuffer();
  }

  /** How many pairs so many counts make. */
  public static int of(int counts) {
    return counts + 1 >> 1;
  }

  /**
   * Copies counts into pairs. Beside a last one alone stands 0 where all stretches are of one
   * length, else anything.
   */
  public void pack(short[] from, int start, int length, int[] into) {
    counts.put(0, from, start, length);
    pairs.get(0, into, 0, of(length));
  }

  /** Copies pairs back into so many counts. */
  public void unpack(int[] from, short[] into, int start, int length) {
    pairs.put(0, from, 0, of(length));
    counts.get(0, into, start, length);
  }
}
