package railglow.live;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.net.InetSocketAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.concurrent.CopyOnWriteArrayList;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** Who is let in, and that STOP is always heard, in plain HTTP. */
@Timeout(20)
class LiveGateTest {
  private final List<String> stops = new CopyOnWriteArrayList<>();
  private LivePage page;
  private PlainClient client;

  @BeforeEach
  void start() throws IOException {
    page = PretendedRun.page(stops::add);
    client = new PlainClient(page);
  }

  @AfterEach
  void end() {
    page.close();
  }

  @Test
  void onlyTheTokenOpensAnything() throws IOException {
    for (String path : page.paths()) {
      assertEquals(403, client.get(path).code(), path);
      assertEquals(403, client.get(path + "?token=00000000000000000000000000000000").code(), path);
    }
    assertEquals(200, client.get("/?token=" + client.token()).code());
    assertEquals(404, client.get("/other?token=" + client.token()).code());
    assertEquals(32, client.token().length());
  }

  @Test
  void eachRunHasATokenOfItsOwn() throws IOException {
    try (LivePage other = PretendedRun.page(who -> {})) {
      assertNotEquals(page.address().replaceAll(".*=", ""), other.address().replaceAll(".*=", ""));
    }
  }

  @Test
  void otherSitesAreRefusedEvenWithTheToken() throws IOException {
    String path = "/?token=" + client.token();
    assertEquals(403, client.get(path, "Origin: http://evil.example").code());
    assertEquals(403, client.get(path, "Sec-Fetch-Site: cross-site").code());
    assertEquals(403, client.get(path, "Host: evil.example:" + page.port()).code());
    int stop = client.stopPort();
    String right = "token=" + client.token();
    assertEquals(403, client.post(stop, right, "Origin: http://evil.example").code());
    assertEquals(403, client.post(stop, right, "Origin: null").code());
    assertEquals(403, client.post(stop, "token=wrong").code());
    assertEquals(403, client.post(stop, "").code());
    assertEquals(List.of(), stops);
  }

  @Test
  void stopIsHeardOnBothListenersAndNothingElseIs() throws IOException {
    String origin = "Origin: http://127.0.0.1:" + page.port();
    PlainClient.Reply reply = client.post(client.stopPort(), "token=" + client.token(), origin);
    assertEquals(200, reply.code());
    assertTrue(reply.headers().toLowerCase().contains("access-control-allow-origin: http://127"));
    assertEquals(200, client.post(page.port(), "token=" + client.token(), origin).code());
    assertEquals(2, stops.size());
    assertEquals(
        403,
        client
            .send(
                client.stopPort(),
                "GET /stop?token="
                    + client.token()
                    + " HTTP/1.1\r\nHost: 127.0.0.1:"
                    + client.stopPort()
                    + "\r\nConnection: close\r\n\r\n")
            .code());
    assertEquals(2, stops.size());
  }

  @Test
  void thereIsNoPathFromThePageToAnythingButStop() throws IOException {
    Set<String> known =
        Set.of(
            "/",
            "/view",
            "/page.css",
            "/page.js",
            "/sounds.js",
            "/view.js",
            "/worker.js",
            "/brief",
            "/facts",
            "/sounds",
            "/state",
            "/picture/now",
            "/picture/difference");
    assertEquals(known, page.paths(), "a new path is looked at by whoever adds it here");
    for (String path : known) {
      for (String method : List.of("POST", "PUT", "DELETE", "PATCH")) {
        assertEquals(
            403,
            client
                .send(
                    page.port(),
                    method
                        + " "
                        + path
                        + "?token="
                        + client.token()
                        + " HTTP/1.1\r\nHost: 127.0.0.1:"
                        + page.port()
                        + "\r\nContent-Length: 0\r\nConnection: close\r\n\r\n")
                .code(),
            method + " " + path);
      }
      int code = client.get(path + "?token=" + client.token() + "&volts=5").code();
      assertTrue(code == 200 || code == 204, path + " gave " + code);
    }
    assertEquals(List.of(), stops);
    assertEquals(404, client.get("/volts?token=" + client.token()).code());
  }

  @Test
  void itListensOnTheLoopbackInterfaceOnly() throws IOException {
    assertTrue(page.address().startsWith("http://127.0.0.1:"));
    try (ServerSocket elsewhere = new ServerSocket()) {
      // The same port of another loopback address is still free.
      elsewhere.bind(new InetSocketAddress("127.0.0.2", page.port()));
      assertTrue(elsewhere.isBound());
    }
  }

  @Test
  void thePageForbidsOutsideResources() throws IOException {
    String headers = client.get("/?token=" + client.token()).headers();
    assertTrue(headers.contains("default-src 'none'"), headers);
    assertTrue(headers.contains("frame-ancestors 'none'"), headers);
    assertFalse(client.get("/?token=" + client.token()).text().contains("https://"));
  }

  @Test
  void theFrameOfPicturesIsServedUnderAnotherNameToThePageAlone() throws IOException {
    String html = client.get("/?token=" + client.token()).text();
    assertTrue(html.contains("src=\"http://localhost:" + page.port() + "/view?token="), html);
    String view = "/view?token=" + client.token();
    assertEquals(403, client.get(view, "Sec-Fetch-Site: cross-site").code());
    PlainClient.Reply framed =
        client.get(view, "Sec-Fetch-Site: cross-site", "Sec-Fetch-Dest: iframe");
    assertEquals(200, framed.code());
    String mine = "frame-ancestors 'self' http://localhost:" + page.port();
    assertTrue(framed.headers().contains(mine), framed.headers());
    assertEquals(
        403,
        client
            .get(
                "/?token=" + client.token(), "Sec-Fetch-Site: cross-site", "Sec-Fetch-Dest: iframe")
            .code());
  }

  @Test
  void stopIsServedWhileEveryOtherThreadIsBusyAndNobodyReadsItsAnswers() throws IOException {
    page.onFrame(PretendedRun.frame(1, 29000, 30000));
    client.json("/state?");
    page.onFrame(PretendedRun.frame(2, 29000, 30000));
    List<Socket> deaf = new ArrayList<>();
    try {
      for (int i = 0; i < 40; i++) {
        deaf.add(
            client.opened(
                page.port(),
                "GET /picture/now?token="
                    + client.token()
                    + " HTTP/1.1\r\nHost: 127.0.0.1:"
                    + page.port()
                    + "\r\n\r\n"));
      }
      assertEquals(200, client.post(client.stopPort(), "token=" + client.token()).code());
      assertEquals(List.of("STOP on the live page"), stops);
    } finally {
      for (Socket viewer : deaf) {
        viewer.close();
      }
    }
  }

  @Test
  void stopIsServedWhileOthersHaveBegunToAskForItAndNeverEnd() throws IOException {
    int port = client.stopPort();
    List<Socket> halves = new ArrayList<>();
    try {
      for (int i = 0; i < 40; i++) {
        halves.add(
            client.opened(
                port,
                "POST /stop HTTP/1.1\r\nHost: 127.0.0.1:"
                    + port
                    + "\r\nContent-Length: 40\r\n\r\ntok"));
      }
      assertEquals(200, client.post(port, "token=" + client.token()).code());
      assertEquals(List.of("STOP on the live page"), stops);
    } finally {
      for (Socket half : halves) {
        half.close();
      }
    }
  }
}
