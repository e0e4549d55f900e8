package railglow.camera;

/** How one pixel is written in a raw frame. */
public enum SampleType {
  /** One byte, 0 to 255. */
  U8(1, 255),
  /** Two bytes of which the upper two bits mean something else and are cut off. */
  U14(2, 16_383),
  /** Two bytes, 0 to 65535. */
  U16(2, 65_535),
  /** Two bytes in two's complement; kept as the value + 32768, so that counts stay unsigned. */
  I16(2, 32_767),
  /** Four bytes, IEEE 754; NaN is a dead pixel. */
  F32(4, Double.POSITIVE_INFINITY);

  /** What is added to a signed sample to make it a count. */
  public static final int SIGNED_OFFSET = 32768;

  private final int bytes;
  private final double largest;

  SampleType(int bytes, double largest) {
    this.bytes = bytes;
    this.largest = largest;
  }

  public int bytes() {
    return bytes;
  }

  /** The largest value a sample can have, as the camera means it. */
  public double largest() {
    return largest;
  }
}
