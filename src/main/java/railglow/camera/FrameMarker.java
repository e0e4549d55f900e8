package railglow.camera;

import java.util.HexFormat;

/** Bytes that stand in every frame at the same place. Immutable. */
public final class FrameMarker {
  private final int offsetBytes;
  private final byte[] bytes;

  /**
   * @param offsetBytes from the first byte of the frame
   * @param bytes at least one; copied
   */
  public FrameMarker(int offsetBytes, byte[] bytes) {
    if (bytes.length == 0 || offsetBytes < 0) {
      throw new IllegalArgumentException("a marker needs at least one byte inside the frame");
    }
    this.offsetBytes = offsetBytes;
    this.bytes = bytes.clone();
  }

  public int offsetBytes() {
    return offsetBytes;
  }

  public int endBytes() {
    return offsetBytes + bytes.length;
  }

  /** Whether a frame that starts there has the marker in its place. */
  public boolean matches(byte[] data, int start) {
    for (int i = 0; i < bytes.length; i++) {
      if (data[start + offsetBytes + i] != bytes[i]) {
        return false;
      }
    }
    return true;
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof FrameMarker that
        && offsetBytes == that.offsetBytes
        && java.util.Arrays.equals(bytes, that.bytes);
  }

  @Override
  public int hashCode() {
    return 31 * offsetBytes + java.util.Arrays.hashCode(bytes);
  }

  @Override
  public String toString() {
    return HexFormat.of().formatHex(bytes) + " at byte " + offsetBytes;
  }
}
