package railglow.live;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.net.Inet4Address;
import java.net.InetAddress;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CopyOnWriteArrayList;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import railglow.observed.OutputState;

/** A page that others on the network can reach is guarded like one of this machine. */
@Timeout(60)
class LiveElsewhereTest {
  private final List<String> stops = new CopyOnWriteArrayList<>();
  private LivePage page;
  private PlainClient client;

  @BeforeEach
  void start() throws IOException {
    Optional<Inet4Address> address = PretendedRun.elsewhere();
    assumeTrue(address.isPresent(), "this machine has no address but its own loopback");
    page = PretendedRun.page(new LiveDoor(address.get(), 0), stops::add);
    client = new PlainClient(page);
  }

  @AfterEach
  void end() {
    if (page != null) {
      page.close();
    }
  }

  @Test
  void aTokenIsNeededAndOtherSitesAreRefused() throws IOException {
    for (String path : page.paths()) {
      assertEquals(403, client.get(path).code(), path);
      String given = path + "?token=" + client.token();
      assertEquals(403, client.get(given, "Origin: http://evil.example").code(), path);
      assertEquals(403, client.get(given, "Host: evil.example:" + page.port()).code(), path);
    }
    String right = "token=" + client.token();
    assertEquals(403, client.post(client.stopPort(), "token=wrong").code());
    assertEquals(403, client.post(client.stopPort(), right, "Origin: http://evil.example").code());
    assertEquals(List.of(), stops);
  }

  @Test
  void stopHasAListenerOfItsOwnThere() throws IOException {
    assertNotEquals(page.port(), client.stopPort());
    assertEquals(200, client.post(client.stopPort(), "token=" + client.token()).code());
    assertEquals(List.of("STOP on the live page"), stops);
  }

  @Test
  void theFrameOfPicturesHasAnotherNameThere() throws IOException {
    InetAddress address = InetAddress.getByName(client.host());
    byte[] bytes = address.getAddress();
    String mapped =
        String.format(
            "http://[::ffff:%x:%x]:%d",
            (bytes[0] & 0xFF) << 8 | bytes[1] & 0xFF,
            (bytes[2] & 0xFF) << 8 | bytes[3] & 0xFF,
            page.port());
    String html = client.get("/?token=" + client.token()).text();
    assertTrue(html.contains("src=\"" + mapped + "/view?token="), html);
    PlainClient.Reply framed =
        client.get(
            "/view?token=" + client.token(),
            "Host: " + mapped.substring("http://".length()),
            "Sec-Fetch-Site: cross-site",
            "Sec-Fetch-Dest: iframe");
    assertEquals(200, framed.code());
    String mine = "frame-ancestors 'self' http://" + client.host() + ":" + page.port();
    assertTrue(framed.headers().contains(mine), framed.headers());
  }

  @Test
  void inABrowserStopIsHeardWhileTheFrameHangsForGood(@TempDir Path profile) throws Exception {
    assumeTrue(Browser.isInstalled(), "no Chromium at /usr/bin/chromium");
    try (Browser browser = new Browser(profile)) {
      browser.open(page.address());
      PageInBrowser.await("the page", () -> browser.words("state-words").equals("OUTPUT UNKNOWN"));
      page.onProgress(PretendedRun.progress(1, OutputState.ON, null));
      PageInBrowser.await("numbers", () -> browser.viewWords("volts").equals("1.000"));
      browser.viewValue("setTimeout(() => { for (;;) {} }, 0); 1");
      page.onBetween(OutputState.PROVEN_OFF);
      PageInBrowser.await(
          "the state goes on", () -> browser.words("state-words").equals("OFF, proven"));
      browser.pressSpace();
      PageInBrowser.await("the stop", () -> !stops.isEmpty());
    }
  }
}
