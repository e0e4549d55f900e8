package railglow.live;

import java.net.InetAddress;
import java.util.List;

/**
 * Where a page is reached.
 *
 * @param address of this machine that it listens on
 * @param firstPort tried first, then those above it; 0 for any that is free
 */
public record LiveDoor(InetAddress address, int firstPort) {
  /** The first port tried; the next free one is taken when it is not free. */
  public static final int USUAL_PORT = 8075;

  private static final String LOOPBACK = "127.0.0.1";
  private static final String LOOPBACK_NAME = "localhost";

  /** Reached from this machine only. */
  public static LiveDoor ofThisMachine(int firstPort) {
    return new LiveDoor(InetAddress.getLoopbackAddress(), firstPort);
  }

  public boolean isLoopback() {
    return address.isLoopbackAddress();
  }

  /** The name that goes into the page's address. */
  String host() {
    return isLoopback() ? LOOPBACK : address.getHostAddress();
  }

  /** Every name that a request may be addressed to. */
  List<String> hosts() {
    return isLoopback() ? List.of(LOOPBACK, LOOPBACK_NAME) : List.of(host());
  }

  /**
   * Another name for the same place, so that a browser takes what it shows for another site and
   * gives it a process of its own; the same name where there is no other.
   */
  String otherHost(String host) {
    return hosts().stream().filter(name -> !name.equals(host)).findFirst().orElse(host);
  }
}
