package railglow.live;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import railglow.observed.OutputState;
import railglow.run.RunEnding;
import railglow.safety.Stop;
import railglow.safety.StopCause;

/** The page's server, spoken to in plain HTTP so that every header is under control. */
@Timeout(20)
class LivePageTest {
  private final List<String> stops = new CopyOnWriteArrayList<>();
  private LivePage page;
  private String token;

  @BeforeEach
  void start() throws IOException {
    page = LivePage.start(PretendedRun.facts(), 0, stops::add);
    token = page.address().replaceAll(".*token=", "");
  }

  @AfterEach
  void end() {
    page.close();
  }

  private record Reply(int code, String headers, byte[] body) {
    String text() {
      return new String(body, StandardCharsets.UTF_8);
    }
  }

  private static Reply send(int port, String request) throws IOException {
    try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), port)) {
      socket.getOutputStream().write(request.getBytes(StandardCharsets.UTF_8));
      byte[] all = socket.getInputStream().readAllBytes();
      String text = new String(all, StandardCharsets.ISO_8859_1);
      int split = text.indexOf("\r\n\r\n");
      byte[] body = java.util.Arrays.copyOfRange(all, split + 4, all.length);
      return new Reply(Integer.parseInt(text.substring(9, 12)), text.substring(0, split), body);
    }
  }

  private Reply get(String path, String... headers) throws IOException {
    String more = String.join("", List.of(headers).stream().map(h -> h + "\r\n").toList());
    String host = more.contains("Host:") ? "" : "Host: 127.0.0.1:" + page.port() + "\r\n";
    return send(
        page.port(), "GET " + path + " HTTP/1.1\r\n" + host + more + "Connection: close\r\n\r\n");
  }

  private Reply post(int port, String body, String... headers) throws IOException {
    String more = String.join("", List.of(headers).stream().map(h -> h + "\r\n").toList());
    return send(
        port,
        "POST /stop HTTP/1.1\r\nHost: 127.0.0.1:"
            + port
            + "\r\n"
            + more
            + "Content-Length: "
            + body.length()
            + "\r\nConnection: close\r\n\r\n"
            + body);
  }

  private int stopPort() throws IOException {
    Matcher matcher =
        Pattern.compile("data-stop=\"http://127.0.0.1:([0-9]+)/stop\"")
            .matcher(get("/?token=" + token).text());
    assertTrue(matcher.find());
    return Integer.parseInt(matcher.group(1));
  }

  @Test
  void onlyTheTokenOpensAnything() throws IOException {
    for (String path : List.of("/", "/events", "/picture/now", "/page.js", "/worker.js")) {
      assertEquals(403, get(path).code(), path);
      assertEquals(403, get(path + "?token=00000000000000000000000000000000").code(), path);
    }
    assertEquals(200, get("/?token=" + token).code());
    assertEquals(404, get("/other?token=" + token).code());
    assertEquals(32, token.length());
  }

  @Test
  void eachRunHasATokenOfItsOwn() throws IOException {
    try (LivePage other = LivePage.start(PretendedRun.facts(), 0, who -> {})) {
      assertNotEquals(page.address().replaceAll(".*=", ""), other.address().replaceAll(".*=", ""));
    }
  }

  @Test
  void otherSitesAreRefusedEvenWithTheToken() throws IOException {
    String path = "/?token=" + token;
    assertEquals(403, get(path, "Origin: http://evil.example").code());
    assertEquals(403, get(path, "Sec-Fetch-Site: cross-site").code());
    assertEquals(403, get(path, "Host: evil.example:" + page.port()).code());
    int stop = stopPort();
    String right = "token=" + token;
    assertEquals(403, post(stop, right, "Origin: http://evil.example").code());
    assertEquals(403, post(stop, right, "Origin: null").code());
    assertEquals(403, post(stop, "token=wrong").code());
    assertEquals(403, post(stop, "").code());
    assertEquals(List.of(), stops);
  }

  @Test
  void stopIsHeardOnBothListenersAndNothingElseIs() throws IOException {
    String origin = "Origin: http://127.0.0.1:" + page.port();
    Reply reply = post(stopPort(), "token=" + token, origin);
    assertEquals(200, reply.code());
    assertTrue(reply.headers().toLowerCase().contains("access-control-allow-origin: http://127"));
    assertEquals(200, post(page.port(), "token=" + token, origin).code());
    assertEquals(2, stops.size());
    assertEquals(
        403,
        send(
                stopPort(),
                "GET /stop?token="
                    + token
                    + " HTTP/1.1\r\nHost: 127.0.0.1:"
                    + stopPort()
                    + "\r\nConnection: close\r\n\r\n")
            .code());
    assertEquals(2, stops.size());
  }

  @Test
  void itListensOnTheLoopbackInterfaceOnly() throws IOException {
    assertTrue(page.address().startsWith("http://127.0.0.1:"));
    try (ServerSocket elsewhere = new ServerSocket()) {
      // The same port of another loopback address is still free.
      elsewhere.bind(new java.net.InetSocketAddress("127.0.0.2", page.port()));
      assertTrue(elsewhere.isBound());
    }
  }

  @Test
  void thePageForbidsOutsideResources() throws IOException {
    String headers = get("/?token=" + token).headers();
    assertTrue(headers.contains("default-src 'none'"), headers);
    assertTrue(headers.contains("frame-ancestors 'none'"), headers);
    assertFalse(get("/?token=" + token).text().contains("https://"));
  }

  @Test
  void aTakenPortGivesTheNextFreeOne() throws IOException {
    try (LivePage second = LivePage.start(PretendedRun.facts(), page.port(), who -> {})) {
      assertNotEquals(page.port(), second.port());
    }
  }

  @Test
  void aViewerGetsWhatWentBeforeAndWhatComes() throws IOException {
    page.onProgress(PretendedRun.progress(1, OutputState.PROVEN_OFF, null));
    page.onMessage("the clip gets warm");
    try (Socket viewer = new Socket(InetAddress.getLoopbackAddress(), page.port())) {
      viewer
          .getOutputStream()
          .write(
              ("GET /events?token="
                      + token
                      + " HTTP/1.1\r\nHost: 127.0.0.1:"
                      + page.port()
                      + "\r\n\r\n")
                  .getBytes(StandardCharsets.UTF_8));
      BufferedReader reader =
          new BufferedReader(
              new InputStreamReader(viewer.getInputStream(), StandardCharsets.UTF_8));
      String hello = dataOf(reader, "hello");
      assertTrue(hello.contains("\"history\":[[1.0,0.0,0.0,0.0,0.3]]"), hello);
      assertTrue(hello.contains("the clip gets warm"), hello);
      assertTrue(hello.contains("\"limit\":0.5"), hello);
      assertEquals(1, page.viewers());
      page.onProgress(PretendedRun.progress(2, OutputState.ON, PretendedRun.source(0.2)));
      String state = dataOf(reader, "state");
      assertTrue(state.contains("\"output\":\"ON\"") && state.contains("\"watts\":0.145"), state);
      page.onEnded(
          new RunEnding(
              new Stop(StopCause.OPERATOR_REQUEST, 5, "STOP on the live page"),
              OutputState.PROVEN_OFF,
              ""));
      assertTrue(dataOf(reader, "state").contains("\"proven\":true"));
    }
  }

  private static String dataOf(BufferedReader reader, String event) throws IOException {
    String line = reader.readLine();
    while (!line.equals("event: " + event)) {
      line = reader.readLine();
    }
    return reader.readLine();
  }

  @Test
  void picturesCarryTheirSizeScaleAndLevels() throws IOException {
    assertEquals(204, get("/picture/difference?token=" + token).code());
    page.onLook(PretendedRun.look(5, List.of()));
    ByteBuffer packet =
        ByteBuffer.wrap(get("/picture/difference?token=" + token).body())
            .order(ByteOrder.LITTLE_ENDIAN);
    assertEquals(5, packet.getInt(0));
    assertEquals(256, packet.getShort(4));
    assertEquals(192, packet.getShort(6));
    assertEquals(-0.2f, packet.getFloat(8), 1e-6);
    assertEquals(0.2f, packet.getFloat(12), 1e-6);
    assertEquals(254, packet.get(16 + 114 * 256 + 164) & 0xFF, "the warmest pixel");
    assertEquals(127, packet.get(16) & 0xFF, "no difference");
    assertEquals(16 + 256 * 192, packet.limit());
  }

  @Test
  void temperaturesAreScaledBetweenTheirEnds() {
    byte[] packet =
        LivePicture.ofTemperatures(
            7, PretendedRun.frame(7, 29000, 30000).samples(), PretendedRun.facts());
    ByteBuffer view = ByteBuffer.wrap(packet).order(ByteOrder.LITTLE_ENDIAN);
    assertEquals(29000 * 0.01 - 273.15, view.getFloat(8), 0.3);
    assertEquals(30000 * 0.01 - 273.15, view.getFloat(12), 0.3);
    assertTrue((view.get(16) & 0xFF) < 5 && (view.get(16 + 255) & 0xFF) > 250);
  }

  @Test
  void stopIsServedWhileEveryOtherThreadIsBusyAndViewersDoNotRead() throws IOException {
    List<Socket> deaf = new ArrayList<>();
    try {
      for (int i = 0; i < 40; i++) {
        Socket viewer = new Socket(InetAddress.getLoopbackAddress(), page.port());
        viewer.setReceiveBufferSize(1024);
        viewer
            .getOutputStream()
            .write(
                ("GET /events?token="
                        + token
                        + " HTTP/1.1\r\nHost: 127.0.0.1:"
                        + page.port()
                        + "\r\n\r\n")
                    .getBytes(StandardCharsets.UTF_8));
        deaf.add(viewer);
      }
      for (int i = 0; i < 2000; i++) {
        page.onProgress(PretendedRun.progress(i * 0.1, OutputState.ON, null));
      }
      assertEquals(200, post(stopPort(), "token=" + token).code());
      assertEquals(List.of("STOP on the live page"), stops);
    } finally {
      for (Socket viewer : deaf) {
        viewer.close();
      }
    }
  }
}
