package railglow.camera;

import java.nio.ByteOrder;

/** The order of the bytes of one number. */
public enum Endian {
  /** Least significant byte first. */
  LITTLE(ByteOrder.LITTLE_ENDIAN),
  /** Most significant byte first. */
  BIG(ByteOrder.BIG_ENDIAN);

  private final ByteOrder order;

  Endian(ByteOrder order) {
    this.order = order;
  }

  public ByteOrder order() {
    return order;
  }
}
