package railglow.camera;

/**
 * A whole number that the camera writes into every frame.
 *
 * @param offsetBytes from the first byte of the frame
 * @param sizeBytes 1, 2, 4 or 8
 */
public record TelemetryField(int offsetBytes, int sizeBytes, Endian endian) {
  public TelemetryField {
    if (sizeBytes != 1 && sizeBytes != 2 && sizeBytes != 4 && sizeBytes != 8) {
      throw new IllegalArgumentException("a field of " + sizeBytes + " bytes; 1, 2, 4 or 8");
    }
    if (offsetBytes < 0) {
      throw new IllegalArgumentException("a field can't start before the frame");
    }
  }

  public int endBytes() {
    return offsetBytes + sizeBytes;
  }

  /** Where the byte of least weight is. */
  int lowestByte() {
    return endian == Endian.BIG ? endBytes() - 1 : offsetBytes;
  }

  /** The value as an unsigned number; of 8 bytes, all 64 bits. */
  public long read(byte[] frame, int start) {
    long value = 0;
    for (int i = 0; i < sizeBytes; i++) {
      int at = endian == Endian.BIG ? i : sizeBytes - 1 - i;
      value = value << 8 | (frame[start + offsetBytes + at] & 0xFF);
    }
    return value;
  }

  /** The step from one value to a later one, across the field's overflow; negative when back. */
  public long step(long earlier, long later) {
    long difference = later - earlier;
    int unused = 64 - 8 * sizeBytes;
    return difference << unused >> unused;
  }
}
