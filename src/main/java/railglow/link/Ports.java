package railglow.link;

import railglow.time.MonotonicClock;

/** The ports there are. */
public final class Ports {
  private Ports() {}

  /** A raw TCP connection straight to an instrument. */
  public static BytePort tcp(String host, int port, MonotonicClock clock) {
    return new TcpPort(host, port, false, clock);
  }

  /** A raw TCP connection to a box with the instrument on its serial line. */
  public static BytePort tcpBridge(String host, int port, MonotonicClock clock) {
    return new TcpPort(host, port, true, clock);
  }

  /** A serial line; pseudo-terminals too. */
  public static BytePort serial(SerialLine line, MonotonicClock clock) {
    return new BlockingPort(
        () -> new SerialPortWay(line),
        new BytePort.Traits(false, false, false, line.nanosPerByte()),
        "serial " + line.path(),
        clock);
  }

  /**
   * The Linux device file of a USB instrument.
   *
   * @param path such as {@code /dev/usbtmc0}
   */
  public static BytePort usbtmc(String path, MonotonicClock clock) {
    return new BlockingPort(
        () -> new DeviceFileWay(path),
        new BytePort.Traits(false, true, true),
        "usb " + path,
        clock);
  }
}
