package railglow.link;

/**
 * The settings of a serial line.
 *
 * @param path the device, such as {@code /dev/ttyUSB0} or {@code COM3}
 * @param baud bits per second
 * @param dataBits 7 or 8
 */
public record SerialLine(
    String path, int baud, int dataBits, Parity parity, StopBits stopBits, FlowControl flow) {
  /** The check bit of each byte. */
  public enum Parity {
    NONE,
    ODD,
    EVEN,
    MARK,
    SPACE
  }

  /** The pause after each byte, in bits. */
  public enum StopBits {
    ONE,
    ONE_AND_A_HALF,
    TWO
  }

  /** How a receiver asks the sender to wait. */
  public enum FlowControl {
    NONE,
    RTS_CTS,
    DTR_DSR,
    XON_XOFF
  }

  public SerialLine {
    if (path.isBlank()) {
      throw new IllegalArgumentException("a serial line needs the path of its device");
    }
    if (baud < 50 || baud > 4_000_000) {
      throw new IllegalArgumentException(baud + " baud is not in 50..4000000");
    }
    if (dataBits != 7 && dataBits != 8) {
      throw new IllegalArgumentException(dataBits + " data bits; a serial line has 7 or 8");
    }
  }

  /** How long one byte takes with its start, check and stop bits. */
  public long nanosPerByte() {
    double stop =
        switch (stopBits) {
          case ONE -> 1;
          case ONE_AND_A_HALF -> 1.5;
          case TWO -> 2;
        };
    double bits = 1 + dataBits + (parity == Parity.NONE ? 0 : 1) + stop;
    return Math.round(bits * 1e9 / baud);
  }

  /** 8 data bits, no parity, 1 stop bit, no flow control. */
  public static SerialLine usual(String path, int baud) {
    return new SerialLine(path, baud, 8, Parity.NONE, StopBits.ONE, FlowControl.NONE);
  }
}
