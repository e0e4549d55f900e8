package railglow.link;

import com.fazecast.jSerialComm.SerialPort;
import com.fazecast.jSerialComm.SerialPortInvalidPortException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import railglow.link.CannotOpenException.Reason;
import railglow.time.Waits;

/** The calls of the serial library. */
final class SerialPortWay implements BlockingWay {
  /** The library counts in tenths of a second here; a read returns with the first bytes. */
  private static final int READ_MILLIS = 100;

  private static final int DRAIN_MILLIS = 200;
  private static final int NO_ENTRY = 2;
  private static final int TRY_AGAIN = 11;
  private static final int NO_ACCESS = 13;
  private static final int BUSY = 16;
  private final SerialLine line;
  private SerialPort port;

  SerialPortWay(SerialLine line) {
    this.line = line;
  }

  @Override
  public void open() throws IOException {
    SerialLibrary.load();
    try {
      port = SerialPort.getCommPort(line.path());
    } catch (SerialPortInvalidPortException e) {
      throw cannotOpen(Files.exists(Path.of(line.path())) ? 0 : NO_ENTRY, e);
    }
    port.setComPortParameters(line.baud(), line.dataBits(), stopBits(), parity());
    port.setFlowControl(flow());
    port.setComPortTimeouts(SerialPort.TIMEOUT_READ_SEMI_BLOCKING, READ_MILLIS, 0);
    if (!port.openPort()) {
      throw cannotOpen(port.getLastErrorCode(), null);
    }
  }

  private CannotOpenException cannotOpen(int errno, Exception cause) {
    String path = line.path();
    boolean heldByUs = errno == NO_ENTRY && Files.exists(Path.of(path));
    return switch (heldByUs ? BUSY : errno) {
      case NO_ENTRY ->
          new CannotOpenException(
              Reason.NOT_FOUND,
              "There is no serial port " + path + ": is the cable plugged in?",
              cause);
      case NO_ACCESS ->
          new CannotOpenException(
              Reason.PERMISSION_DENIED,
              "You may not use " + path + ": add your user to the group that owns it (dialout).",
              cause);
      case BUSY, TRY_AGAIN ->
          new CannotOpenException(
              Reason.BUSY, path + " is in use by another program: close that one first.", cause);
      default ->
          new CannotOpenException(
              Reason.OTHER,
              path + " can't be opened as a serial port with " + line.baud() + " baud.",
              cause);
    };
  }

  private int parity() {
    return switch (line.parity()) {
      case NONE -> SerialPort.NO_PARITY;
      case ODD -> SerialPort.ODD_PARITY;
      case EVEN -> SerialPort.EVEN_PARITY;
      case MARK -> SerialPort.MARK_PARITY;
      case SPACE -> SerialPort.SPACE_PARITY;
    };
  }

  private int stopBits() {
    return switch (line.stopBits()) {
      case ONE -> SerialPort.ONE_STOP_BIT;
      case ONE_AND_A_HALF -> SerialPort.ONE_POINT_FIVE_STOP_BITS;
      case TWO -> SerialPort.TWO_STOP_BITS;
    };
  }

  private int flow() {
    return switch (line.flow()) {
      case NONE -> SerialPort.FLOW_CONTROL_DISABLED;
      case RTS_CTS -> SerialPort.FLOW_CONTROL_RTS_ENABLED | SerialPort.FLOW_CONTROL_CTS_ENABLED;
      case DTR_DSR -> SerialPort.FLOW_CONTROL_DTR_ENABLED | SerialPort.FLOW_CONTROL_DSR_ENABLED;
      case XON_XOFF ->
          SerialPort.FLOW_CONTROL_XONXOFF_IN_ENABLED | SerialPort.FLOW_CONTROL_XONXOFF_OUT_ENABLED;
    };
  }

  @Override
  public int available() {
    return port.bytesAvailable();
  }

  @Override
  public int read(byte[] into) {
    return port.readBytes(into, into.length);
  }

  /** With flow control the other end may hold up even an empty line. */
  @Override
  public boolean takesAtOnce() {
    return line.flow() == SerialLine.FlowControl.NONE && port.bytesAwaitingWrite() == 0;
  }

  @Override
  public void write(byte[] bytes) throws IOException {
    int done = 0;
    while (done < bytes.length) {
      int written = port.writeBytes(bytes, bytes.length - done, done);
      if (written <= 0) {
        throw new IOException("writing failed with error " + port.getLastErrorCode());
      }
      done += written;
    }
  }

  @Override
  public boolean writeWithoutMemory(ReadyMessage message) {
    byte[] bytes = message.bytes();
    return port != null && port.writeBytes(bytes, bytes.length) == bytes.length;
  }

  @Override
  public void close() {
    if (port != null) {
      // opening anew throws away what was not sent yet, and that may be the message that says off
      for (int i = 0; i < DRAIN_MILLIS && port.bytesAwaitingWrite() > 0; i++) {
        Waits.nanos(1_000_000);
      }
      port.closePort();
    }
  }
}
