package railglow.live;

import java.net.Inet4Address;
import java.util.List;
import java.util.Locale;

/**
 * Where a page is reached.
 *
 * @param address of this machine that it listens on
 * @param firstPort tried first, then those above it; 0 for any that is free
 */
public record LiveDoor(Inet4Address address, int firstPort) {
  /** The first port tried; the next free one is taken when it is not free. */
  public static final int USUAL_PORT = 8075;

  private static final String LOOPBACK = "127.0.0.1";
  private static final String LOOPBACK_NAME = "localhost";
  private static final byte[] LOOPBACK_BYTES = {127, 0, 0, 1};

  /** Reached from this machine only. */
  public static LiveDoor ofThisMachine(int firstPort) {
    return new LiveDoor(loopback(), firstPort);
  }

  private static Inet4Address loopback() {
    try {
      return (Inet4Address) Inet4Address.getByAddress(LOOPBACK_BYTES);
    } catch (java.net.UnknownHostException e) {
      throw new IllegalStateException("four bytes are an address", e);
    }
  }

  public boolean isLoopback() {
    return address.isLoopbackAddress();
  }

  /** The name that goes into the page's address. */
  String host() {
    return address.getHostAddress();
  }

  /** Every name that a request may be addressed to. */
  List<String> hosts() {
    return List.of(host(), host().equals(LOOPBACK) ? LOOPBACK_NAME : mapped());
  }

  /**
   * The same address written as an IPv4-mapped one (RFC 4291, 2.5.5.2) as browsers write it (RFC
   * 5952, with hexadecimal digits throughout).
   */
  private String mapped() {
    byte[] bytes = address.getAddress();
    return String.format(
        Locale.ROOT,
        "[::ffff:%x:%x]",
        (bytes[0] & 0xFF) << 8 | bytes[1] & 0xFF,
        (bytes[2] & 0xFF) << 8 | bytes[3] & 0xFF);
  }

  /**
   * Another name for the same place, so that a browser takes what it shows for another site and
   * gives it a process of its own.
   */
  String otherHost(String host) {
    return hosts().get(1 - hosts().indexOf(host));
  }
}
