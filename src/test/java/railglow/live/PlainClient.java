package railglow.live;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Speaks plain HTTP to a page's server, so that every header is under control. */
final class PlainClient {
  private final LivePage page;
  private final String token;
  private final String host;

  PlainClient(LivePage page) {
    this.page = page;
    this.host = page.address().replaceAll("http://(.*):[0-9]+/.*", "$1");
    this.token = page.address().replaceAll(".*token=", "");
  }

  record Reply(int code, String headers, byte[] body) {
    String text() {
      return new String(body, StandardCharsets.UTF_8);
    }
  }

  String token() {
    return token;
  }

  String host() {
    return host;
  }

  Reply get(String path, String... headers) throws IOException {
    String more = lines(headers);
    String named = more.contains("Host:") ? "" : "Host: " + host + ":" + page.port() + "\r\n";
    return send(
        page.port(), "GET " + path + " HTTP/1.1\r\n" + named + more + "Connection: close\r\n\r\n");
  }

  /**
   * @param path with all of its query but the token, and what goes before that
   */
  JsonNode json(String path) throws IOException {
    return new ObjectMapper().readTree(get(path + "token=" + token).body());
  }

  Reply post(int port, String body, String... headers) throws IOException {
    return send(
        port,
        "POST /stop HTTP/1.1\r\nHost: "
            + host
            + ":"
            + port
            + "\r\n"
            + lines(headers)
            + "Content-Length: "
            + body.length()
            + "\r\nConnection: close\r\n\r\n"
            + body);
  }

  private static String lines(String... headers) {
    return String.join("", List.of(headers).stream().map(h -> h + "\r\n").toList());
  }

  Reply send(int port, String request) throws IOException {
    try (Socket socket = new Socket(host, port)) {
      socket.getOutputStream().write(request.getBytes(StandardCharsets.UTF_8));
      byte[] all = socket.getInputStream().readAllBytes();
      String text = new String(all, StandardCharsets.ISO_8859_1);
      int split = text.indexOf("\r\n\r\n");
      byte[] body = Arrays.copyOfRange(all, split + 4, all.length);
      return new Reply(Integer.parseInt(text.substring(9, 12)), text.substring(0, split), body);
    }
  }

  /** Sends and does not read; the caller closes it. */
  Socket opened(int port, String request) throws IOException {
    Socket socket = new Socket();
    socket.setReceiveBufferSize(1024);
    socket.connect(new InetSocketAddress(host, port));
    socket.getOutputStream().write(request.getBytes(StandardCharsets.UTF_8));
    return socket;
  }

  /** The port that the page sends STOP to. */
  int stopPort() throws IOException {
    Matcher matcher =
        Pattern.compile("data-stop=\"http://" + Pattern.quote(host) + ":([0-9]+)/stop\"")
            .matcher(get("/?token=" + token).text());
    if (!matcher.find()) {
      throw new AssertionError("the page names no way for STOP");
    }
    return Integer.parseInt(matcher.group(1));
  }
}
