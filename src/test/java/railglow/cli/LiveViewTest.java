package railglow.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.net.Inet4Address;
import java.net.NetworkInterface;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import railglow.live.LiveFacts;
import railglow.live.LivePage;
import railglow.safety.Envelope;
import railglow.time.SystemClock;

/** Where the page is served, and what is said about it. */
class LiveViewTest {
  private final Typed typed = Typed.together();
  private final LiveView.Options options = new LiveView.Options();

  @Test
  void aTakenPortIsSaidAndTheNextFreeOneTaken() throws Exception {
    options.port = 0;
    try (LivePage first = serve()) {
      options.port = first.port();
      try (LivePage second = serve()) {
        assertTrue(second.port() != first.port());
        assertTrue(said().contains("(port " + first.port() + " is taken)"), said());
        assertTrue(said().contains("http://127.0.0.1:" + second.port() + "/?token="), said());
      }
    }
    assertFalse(said().contains("others on this network"), said());
  }

  @Test
  void anAddressThatOthersReachIsWarnedOf() throws Exception {
    Optional<Inet4Address> address =
        NetworkInterface.networkInterfaces()
            .flatMap(NetworkInterface::inetAddresses)
            .filter(one -> one instanceof Inet4Address && !one.isLoopbackAddress())
            .map(Inet4Address.class::cast)
            .findFirst();
    assumeTrue(address.isPresent(), "this machine has no address but its own loopback");
    options.address = address.get().getHostAddress();
    options.port = 0;
    try (LivePage page = serve()) {
      assertTrue(page.address().startsWith("http://" + options.address + ":"), page.address());
      assertTrue(
          said().contains("others on this network who have that address can watch and stop"),
          said());
      assertTrue(said().contains("not encrypted"), said());
    }
  }

  @Test
  void addressesThatCantBeServedAreRefusedWithWhatToDo() {
    assertEquals(
        "--live-address 0.0.0.0 means every network at once; name one address of this machine",
        refusal("0.0.0.0"));
    assertEquals(
        "--live-address ::1 is an IPv6 address; give one like 192.168.1.5", refusal("::1"));
    assertEquals(
        "--live-address 198.51.100.7 is no address of this machine; 'ip address' lists them",
        refusal("198.51.100.7"));
    assertEquals(
        "--live-address no.such.host.invalid is no address: give it as 192.168.1.5",
        refusal("no.such.host.invalid"));
    options.port = 70_000;
    assertEquals("--live-port is 70000; 0 to 65535 is possible", refusal("127.0.0.1"));
  }

  private String refusal(String address) {
    options.address = address;
    return assertThrows(UserMistake.class, this::serve).getMessage();
  }

  private LivePage serve() throws UserMistake {
    LiveFacts facts =
        new LiveFacts("HX-12", "3V3", "1 V", 0.05, Envelope.OPEN, Double.NaN, Double.NaN, 0);
    return LiveView.serve(options, facts, SystemClock.INSTANCE, typed.terminal(), who -> {});
  }

  private String said() {
    return typed.answers();
  }
}
