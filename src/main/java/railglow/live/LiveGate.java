package railglow.live;

import com.sun.net.httpserver.Headers;
import com.sun.net.httpserver.HttpExchange;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.SecureRandom;
import java.util.HexFormat;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * Decides who may talk to the page's server: only those who know the page's token, who address this
 * machine by a name it is served under, and who were not sent by another site. Thread-safe.
 */
final class LiveGate {
  private static final int TOKEN_BYTES = 16;
  private static final String FRAME_DESTINATION = "iframe";
  private final String token;
  private volatile Set<String> origins = Set.of();
  private volatile Set<String> hosts = Set.of();

  LiveGate() {
    byte[] random = new byte[TOKEN_BYTES];
    new SecureRandom().nextBytes(random);
    token = HexFormat.of().formatHex(random);
  }

  String token() {
    return token;
  }

  /** Sets the names and ports once they are known. */
  void serve(LiveDoor door, int pagePort, int stopPort) {
    origins =
        door.hosts().stream()
            .map(host -> "http://" + host + ":" + pagePort)
            .collect(Collectors.toUnmodifiableSet());
    hosts =
        door.hosts().stream()
            .flatMap(host -> List.of(host + ":" + pagePort, host + ":" + stopPort).stream())
            .collect(Collectors.toUnmodifiableSet());
  }

  /** Whether a request that carries this token may be served. */
  boolean admits(HttpExchange exchange, String givenToken) {
    return knows(exchange, givenToken)
        && !"cross-site".equals(exchange.getRequestHeaders().getFirst("Sec-Fetch-Site"));
  }

  /**
   * The same for what the page shows in a frame: it is served under another name than the page and
   * therefore looks like another site's to a browser. Only the page itself may hold such a frame,
   * which its policy says.
   */
  boolean admitsFrame(HttpExchange exchange, String givenToken) {
    boolean framed =
        FRAME_DESTINATION.equals(exchange.getRequestHeaders().getFirst("Sec-Fetch-Dest"));
    return framed ? knows(exchange, givenToken) : admits(exchange, givenToken);
  }

  private boolean knows(HttpExchange exchange, String givenToken) {
    Headers headers = exchange.getRequestHeaders();
    String host = headers.getFirst("Host");
    String origin = headers.getFirst("Origin");
    return host != null
        && hosts.contains(host)
        && (origin == null || origins.contains(origin))
        && sameToken(givenToken);
  }

  /** In a time that does not tell how much of it was right. */
  private boolean sameToken(String given) {
    return given != null
        && MessageDigest.isEqual(
            token.getBytes(StandardCharsets.US_ASCII), given.getBytes(StandardCharsets.UTF_8));
  }

  /** The page's own origin, when the request comes from it. */
  String allowedOrigin(HttpExchange exchange) {
    String origin = exchange.getRequestHeaders().getFirst("Origin");
    return origin != null && origins.contains(origin) ? origin : null;
  }

  /** A value in a query or a form body: {@code name=...}; null when there is none. */
  static String valueIn(String text, String name) {
    if (text == null) {
      return null;
    }
    for (String part : List.of(text.split("&"))) {
      if (part.startsWith(name + "=")) {
        return part.substring(name.length() + 1);
      }
    }
    return null;
  }

  /** The token in a query or a form body. */
  static String tokenIn(String text) {
    return valueIn(text, "token");
  }
}
