package railglow.live;

import com.sun.net.httpserver.Headers;
import com.sun.net.httpserver.HttpExchange;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.SecureRandom;
import java.util.HexFormat;
import java.util.List;
import java.util.Set;

/**
 * Decides who may talk to the page's server: only those who know the run's token, who address this
 * machine by its loopback name, and who were not sent by another site. Thread-safe.
 */
final class LiveGate {
  private static final int TOKEN_BYTES = 16;
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

  /** Sets the ports once they are known. */
  void serve(int pagePort, int stopPort) {
    origins = Set.of("http://127.0.0.1:" + pagePort, "http://localhost:" + pagePort);
    hosts =
        Set.of(
            "127.0.0.1:" + pagePort,
            "localhost:" + pagePort,
            "127.0.0.1:" + stopPort,
            "localhost:" + stopPort);
  }

  /** Whether a request that carries this token may be served. */
  boolean admits(HttpExchange exchange, String givenToken) {
    Headers headers = exchange.getRequestHeaders();
    String host = headers.getFirst("Host");
    String origin = headers.getFirst("Origin");
    return host != null
        && hosts.contains(host)
        && (origin == null || origins.contains(origin))
        && !"cross-site".equals(headers.getFirst("Sec-Fetch-Site"))
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

  /** The token in a query or a form body: {@code token=...}; null when there is none. */
  static String tokenIn(String text) {
    if (text == null) {
      return null;
    }
    for (String part : List.of(text.split("&"))) {
      if (part.startsWith("token=")) {
        return part.substring("token=".length());
      }
    }
    return null;
  }
}
