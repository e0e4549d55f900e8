package railglow.supply;

import java.net.URI;
import java.net.URISyntaxException;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import railglow.link.BytePort;
import railglow.link.Ports;
import railglow.time.MonotonicClock;

/**
 * Where a supply is. Immutable.
 *
 * <ul>
 *   <li>{@code tcp://host:port}: the instrument's own raw socket
 *   <li>{@code bridge://host:port}: a box with the instrument on its serial line
 *   <li>{@code serial:/dev/ttyUSB0} or {@code serial:/dev/ttyUSB0?baud=19200}: the rest of the line
 *       as the descriptor says
 *   <li>{@code usbtmc:/dev/usbtmc0}: the Linux device file of a USB instrument
 * </ul>
 */
public final class SupplyAddress {
  /** What kind of way it is. */
  enum Kind {
    TCP,
    BRIDGE,
    SERIAL,
    USBTMC
  }

  private static final Pattern DEVICE =
      Pattern.compile("(serial|usbtmc):([^?\\s]+)(?:\\?baud=(\\d{2,7}))?");
  private final String text;
  private final Kind kind;
  private final String place;
  private final int number;

  private SupplyAddress(String text, Kind kind, String place, int number) {
    this.text = text;
    this.kind = kind;
    this.place = place;
    this.number = number;
  }

  /**
   * @throws IllegalArgumentException with a sentence that says how an address is written
   */
  public static SupplyAddress parse(String text) {
    String stripped = text.strip();
    Matcher device = DEVICE.matcher(stripped);
    if (device.matches()) {
      boolean serial = device.group(1).equals("serial");
      int baud = device.group(3) == null ? 0 : Integer.parseInt(device.group(3));
      if (serial || baud == 0) {
        return new SupplyAddress(
            stripped, serial ? Kind.SERIAL : Kind.USBTMC, device.group(2), baud);
      }
      throw wrong(text);
    }
    try {
      URI uri = new URI(stripped);
      boolean known = "tcp".equals(uri.getScheme()) || "bridge".equals(uri.getScheme());
      boolean plain = uri.getPath() == null || uri.getPath().isEmpty();
      if (known && plain && uri.getHost() != null && uri.getPort() > 0 && uri.getPort() < 65536) {
        Kind kind = "tcp".equals(uri.getScheme()) ? Kind.TCP : Kind.BRIDGE;
        return new SupplyAddress(stripped, kind, uri.getHost(), uri.getPort());
      }
      throw wrong(text);
    } catch (URISyntaxException e) {
      throw wrong(text);
    }
  }

  /** A port to it, not yet opened. */
  public BytePort port(LineManners line, MonotonicClock clock) {
    return switch (kind) {
      case TCP -> Ports.tcp(place, number, clock);
      case BRIDGE -> Ports.tcpBridge(place, number, clock);
      case SERIAL -> Ports.serial((number > 0 ? line.withBaud(number) : line).at(place), clock);
      case USBTMC -> Ports.usbtmc(place, clock);
    };
  }

  /** The same serial line at a baud rate; any other address as it is. */
  public SupplyAddress withBaud(int baud) {
    return kind == Kind.SERIAL ? parse("serial:" + place + "?baud=" + baud) : this;
  }

  /** Whether it is a serial line. */
  public boolean isSerial() {
    return kind == Kind.SERIAL;
  }

  /** Whether it is a network connection, of which there may be more than one at a time. */
  boolean isConnection() {
    return kind == Kind.TCP || kind == Kind.BRIDGE;
  }

  Kind kind() {
    return kind;
  }

  /** The host or the device's path. */
  String place() {
    return place;
  }

  /** The TCP port; the baud rate given, or 0, for a device. */
  int number() {
    return number;
  }

  @Override
  public String toString() {
    return text;
  }

  private static IllegalArgumentException wrong(String text) {
    return new IllegalArgumentException(
        "'"
            + text
            + "' is no supply address; write tcp://HOST:PORT, bridge://HOST:PORT,"
            + " serial:/dev/ttyUSB0, serial:/dev/ttyUSB0?baud=9600 or usbtmc:/dev/usbtmc0");
  }
}
