package railglow.supply;

import java.net.URI;
import java.net.URISyntaxException;
import railglow.link.BytePort;
import railglow.link.TcpPort;
import railglow.time.MonotonicClock;

/**
 * Where a supply is: {@code tcp://host:port}, {@code serial:/dev/ttyUSB0} or {@code
 * usbtmc:/dev/usbtmc0}. Immutable.
 */
public final class SupplyAddress {
  private static final String SERIAL = "serial:";
  private static final String USBTMC = "usbtmc:";
  private final String text;
  private final String host;
  private final int tcpPort;

  private SupplyAddress(String text, String host, int tcpPort) {
    this.text = text;
    this.host = host;
    this.tcpPort = tcpPort;
  }

  /**
   * @throws IllegalArgumentException with a sentence that says how an address is written
   */
  public static SupplyAddress parse(String text) {
    String stripped = text.strip();
    if (isPath(stripped, SERIAL) || isPath(stripped, USBTMC)) {
      return new SupplyAddress(stripped, "", 0);
    }
    try {
      URI uri = new URI(stripped);
      if ("tcp".equals(uri.getScheme()) && uri.getHost() != null && uri.getPort() > 0) {
        return new SupplyAddress(stripped, uri.getHost(), uri.getPort());
      }
      throw wrong(text);
    } catch (URISyntaxException e) {
      throw wrong(text);
    }
  }

  /** A port to it, not yet opened. */
  public BytePort port(LineManners line, MonotonicClock clock) {
    if (text.startsWith(SERIAL) || text.startsWith(USBTMC)) {
      throw new IllegalArgumentException(line + " not yet");
    }
    return new TcpPort(host, tcpPort, false, clock);
  }

  @Override
  public String toString() {
    return text;
  }

  private static boolean isPath(String text, String scheme) {
    return text.startsWith(scheme) && text.length() > scheme.length();
  }

  private static IllegalArgumentException wrong(String text) {
    return new IllegalArgumentException(
        "'"
            + text
            + "' is no supply address; write tcp://HOST:PORT, serial:/dev/ttyUSB0 or"
            + " usbtmc:/dev/usbtmc0");
  }
}
