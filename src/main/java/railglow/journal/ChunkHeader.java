package railglow.journal;

import java.nio.ByteBuffer;
import java.util.EnumSet;
import java.util.Set;
import java.util.zip.CRC32C;
import railglow.observed.FrameMark;

/**
 * The 48 bytes, little-endian, before the pixels of each stored frame.
 *
 * <pre>
 *  0  4 bytes  "RGF1"
 *  4  u32      bytes of pixels that follow
 *  8  i64      number of the frame, as the camera counted
 * 16  i64      arrival, nanoseconds on the run's clock
 * 24  i64      place in this file, from 0
 * 32  u32      marks, one bit each
 * 36  u32      kind: 0 independent, 1 leans on the frame before it, 2 end of the file
 * 40  u32      CRC-32C of the pixels' bytes
 * 44  u32      CRC-32C of bytes 0 to 43
 * </pre>
 *
 * @param payloadCrc as an int
 */
record ChunkHeader(
    int payloadBytes,
    long number,
    long arrivalNanos,
    long ordinal,
    int marks,
    int kind,
    int payloadCrc) {
  private static final FrameMark[] ALL = FrameMark.values();
  static final int BYTES = 48;
  static final int INDEPENDENT = 0;
  static final int LEANING = 1;
  static final int END = 2;

  /** Where its own check sum stands, of the bytes before it. */
  static final int OWN_CRC = 44;

  private static final int MAGIC = 'R' | 'G' << 8 | 'F' << 16 | '1' << 24;

  /**
   * Writes all of a header but its own check sum at the buffer's start, index 0; moves no position
   * and makes no object: this is done for every frame.
   */
  static void put(
      ByteBuffer buffer,
      int payloadBytes,
      long number,
      long arrivalNanos,
      long ordinal,
      int marks,
      int kind,
      int payloadCrc) {
    buffer.putInt(0, MAGIC);
    buffer.putInt(4, payloadBytes);
    buffer.putLong(8, number);
    buffer.putLong(16, arrivalNanos);
    buffer.putLong(24, ordinal);
    buffer.putInt(32, marks);
    buffer.putInt(36, kind);
    buffer.putInt(40, payloadCrc);
  }

  /** The header at an index of the buffer; null when there is none. */
  static ChunkHeader at(ByteBuffer buffer, int index) {
    if (buffer.getInt(index) != MAGIC
        || buffer.getInt(index + OWN_CRC) != crc(buffer, index, OWN_CRC)
        || buffer.getInt(index + 4) < 0) {
      return null;
    }
    return new ChunkHeader(
        buffer.getInt(index + 4),
        buffer.getLong(index + 8),
        buffer.getLong(index + 16),
        buffer.getLong(index + 24),
        buffer.getInt(index + 32),
        buffer.getInt(index + 36),
        buffer.getInt(index + 40));
  }

  static int crc(ByteBuffer buffer, int index, int length) {
    CRC32C crc = new CRC32C();
    crc.update(buffer.slice(index, length));
    return (int) crc.getValue();
  }

  /** The bit of each mark in the file; never to be changed. */
  private static int bit(FrameMark mark) {
    return switch (mark) {
      case TRANSITION -> 1;
      case FROZEN -> 1 << 1;
      case SHUTTER -> 1 << 2;
      case MOVED -> 1 << 3;
      case AFTER_GAP -> 1 << 4;
      case DAMAGED -> 1 << 5;
      case OUTSIDE -> 1 << 6;
    };
  }

  static int bits(Set<FrameMark> marks) {
    int bits = 0;
    for (FrameMark mark : ALL) {
      bits |= marks.contains(mark) ? bit(mark) : 0;
    }
    return bits;
  }

  static Set<FrameMark> marks(int bits) {
    EnumSet<FrameMark> marks = EnumSet.noneOf(FrameMark.class);
    for (FrameMark mark : ALL) {
      if ((bits & bit(mark)) != 0) {
        marks.add(mark);
      }
    }
    return marks;
  }
}
