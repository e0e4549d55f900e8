package railglow.supply;

import railglow.link.SerialLine;

/**
 * How a supply's serial line is set.
 *
 * @param baud bits per second
 * @param dataBits 7 or 8
 */
public record LineManners(
    int baud,
    int dataBits,
    SerialLine.Parity parity,
    SerialLine.StopBits stopBits,
    SerialLine.FlowControl flow) {
  public static final LineManners USUAL =
      new LineManners(
          9600, 8, SerialLine.Parity.NONE, SerialLine.StopBits.ONE, SerialLine.FlowControl.NONE);

  public SerialLine at(String path) {
    return new SerialLine(path, baud, dataBits, parity, stopBits, flow);
  }

  public LineManners withBaud(int newBaud) {
    return new LineManners(newBaud, dataBits, parity, stopBits, flow);
  }
}
