package railglow.live;

import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpHandler;
import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.io.InputStream;
import java.net.BindException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;

/**
 * Serves the page in two parts and takes STOP. What must work when all else hangs, STOP and the
 * large state, is the page itself; what is drawn comes in a frame under another name, which a
 * browser runs in a process of its own. STOP has a listener and threads of its own too.
 *
 * <p>Thread-safe.
 */
final class LiveServer implements AutoCloseable {
  private static final int PORTS_TRIED = 20;
  private static final int LONGEST_BODY = 4096;
  private static final long LONGEST_FAREWELL_MILLIS = 500;
  private static final int FORBIDDEN = 403;
  private static final int NOT_FOUND = 404;
  private static final int NO_CONTENT = 204;
  private static final String PAGE_POLICY =
      "default-src 'none'; script-src 'self'; style-src 'self'; connect-src 'self' %1$s;"
          + " form-action %1$s; frame-src %1$s %2$s; base-uri 'none'; frame-ancestors 'none'";
  private static final String VIEW_POLICY =
      "default-src 'none'; script-src 'self'; worker-src 'self'; style-src 'self'; connect-src"
          + " 'self' %1$s; base-uri 'none'; frame-ancestors %2$s";

  static {
    // Answers leave at once, and a request that never ends gives its thread back.
    setUnlessSet("sun.net.httpserver.nodelay", "true");
    setUnlessSet("sun.net.httpserver.maxReqTime", "20");
  }

  private final LiveGate gate = new LiveGate();
  private final LiveDoor door;
  private final LiveContent content;
  private final Consumer<String> askStop;
  private final HttpServer page;
  private final HttpServer stop;
  private final ExecutorService pageThreads = threads("live-page");
  private final ExecutorService stopThreads = threads("live-stop");

  /** What is served: each call is made on a thread of the server's. */
  interface LiveContent {
    Map<String, Object> brief();

    Map<String, Object> facts();

    Map<String, Object> sounds();

    Map<String, Object> stateSince(long seen);

    byte[] picture(boolean difference);

    byte[] json(Map<String, Object> value);
  }

  /**
   * @param askStop called with who asked, on a thread of its own; must return at once
   * @throws IOException when no port can be had
   */
  LiveServer(LiveDoor door, LiveContent content, Consumer<String> askStop) throws IOException {
    this.door = door;
    this.content = content;
    this.askStop = askStop;
    page = bind(door.address(), door.firstPort());
    stop = bind(door.address(), 0);
    gate.serve(door, port(), stop.getAddress().getPort());
    page.setExecutor(pageThreads);
    page.createContext("/", guarded(this::servePage));
    page.createContext("/stop", this::serveStop);
    stop.setExecutor(stopThreads);
    stop.createContext("/stop", this::serveStop);
    page.start();
    stop.start();
  }

  private static void setUnlessSet(String name, String value) {
    if (System.getProperty(name) == null) {
      System.setProperty(name, value);
    }
  }

  private static HttpServer bind(InetAddress address, int firstPort) throws IOException {
    for (int i = 0; i < PORTS_TRIED; i++) {
      try {
        int port = firstPort == 0 ? 0 : firstPort + i;
        return HttpServer.create(new InetSocketAddress(address, port), 0);
      } catch (BindException e) {
        if (firstPort == 0) {
          throw e;
        }
      }
    }
    return HttpServer.create(new InetSocketAddress(address, 0), 0);
  }

  /** As many as are wanted: one that hangs must not hold the others up. */
  private static ExecutorService threads(String name) {
    return Executors.newCachedThreadPool(
        work -> {
          Thread thread = new Thread(work, name);
          thread.setDaemon(true);
          return thread;
        });
  }

  int port() {
    return page.getAddress().getPort();
  }

  String address() {
    return origin(door.host()) + "/?token=" + gate.token();
  }

  private String origin(String host) {
    return "http://" + host + ":" + port();
  }

  private String stopOrigin() {
    return "http://" + door.host() + ":" + stop.getAddress().getPort();
  }

  /** What answers an admitted request. */
  private interface Answer {
    void to(HttpExchange exchange) throws IOException;
  }

  private HttpHandler guarded(Answer answer) {
    return exchange -> {
      try (exchange) {
        exchange.getResponseHeaders().set("Cache-Control", "no-store");
        exchange.getResponseHeaders().set("Referrer-Policy", "strict-origin");
        exchange.getResponseHeaders().set("X-Content-Type-Options", "nosniff");
        String token = LiveGate.tokenIn(exchange.getRequestURI().getRawQuery());
        boolean admitted =
            exchange.getRequestURI().getPath().equals("/view")
                ? gate.admitsFrame(exchange, token)
                : gate.admits(exchange, token);
        if (!admitted || !exchange.getRequestMethod().equals("GET")) {
          refuse(exchange);
          return;
        }
        answer.to(exchange);
      }
    };
  }

  private static void refuse(HttpExchange exchange) throws IOException {
    send(
        exchange,
        FORBIDDEN,
        "text/plain; charset=utf-8",
        "Not allowed. Open the address that railglow printed for this run.\n"
            .getBytes(StandardCharsets.UTF_8));
  }

  private void servePage(HttpExchange exchange) throws IOException {
    String path = exchange.getRequestURI().getPath();
    switch (path) {
      case "/" -> serveHtml(exchange, "page.html", PAGE_POLICY);
      case "/view" -> serveHtml(exchange, "view.html", VIEW_POLICY);
      case "/page.css" -> resource(exchange, path, "text/css; charset=utf-8");
      case "/page.js", "/sounds.js", "/view.js", "/worker.js" ->
          resource(exchange, path, "text/javascript; charset=utf-8");
      case "/brief" -> json(exchange, content.brief());
      case "/facts" -> json(exchange, content.facts());
      case "/sounds" -> json(exchange, content.sounds());
      case "/state" -> json(exchange, content.stateSince(seen(exchange)));
      case "/picture/now" -> packet(exchange, content.picture(false));
      case "/picture/difference" -> packet(exchange, content.picture(true));
      default -> exchange.sendResponseHeaders(NOT_FOUND, -1);
    }
  }

  private static long seen(HttpExchange exchange) {
    String seen = LiveGate.valueIn(exchange.getRequestURI().getRawQuery(), "seen");
    return seen != null && seen.matches("[0-9]{1,12}") ? Long.parseLong(seen) : 0;
  }

  private void serveHtml(HttpExchange exchange, String name, String policy) throws IOException {
    String host = exchange.getRequestHeaders().getFirst("Host").replaceAll(":[0-9]+$", "");
    String other = origin(door.otherHost(host));
    exchange
        .getResponseHeaders()
        .set("Content-Security-Policy", String.format(policy, stopOrigin(), other));
    String html =
        new String(read(name), StandardCharsets.UTF_8)
            .replace("{token}", gate.token())
            .replace("{stop}", stopOrigin() + "/stop")
            .replace("{other}", other);
    send(exchange, 200, "text/html; charset=utf-8", html.getBytes(StandardCharsets.UTF_8));
  }

  private void resource(HttpExchange exchange, String path, String type) throws IOException {
    send(exchange, 200, type, read(path.substring(1)));
  }

  private static byte[] read(String name) throws IOException {
    try (InputStream in = LiveServer.class.getResourceAsStream(name)) {
      return in.readAllBytes();
    }
  }

  private void json(HttpExchange exchange, Map<String, Object> value) throws IOException {
    send(exchange, 200, "application/json; charset=utf-8", content.json(value));
  }

  private static void packet(HttpExchange exchange, byte[] packet) throws IOException {
    if (packet == null) {
      exchange.sendResponseHeaders(NO_CONTENT, -1);
    } else {
      send(exchange, 200, "application/octet-stream", packet);
    }
  }

  private static void send(HttpExchange exchange, int code, String type, byte[] body)
      throws IOException {
    exchange.getResponseHeaders().set("Content-Type", type);
    exchange.sendResponseHeaders(code, body.length);
    exchange.getResponseBody().write(body);
  }

  private void serveStop(HttpExchange exchange) throws IOException {
    try (exchange) {
      String origin = gate.allowedOrigin(exchange);
      if (origin != null) {
        exchange.getResponseHeaders().set("Access-Control-Allow-Origin", origin);
      }
      byte[] body = exchange.getRequestBody().readNBytes(LONGEST_BODY);
      String token = LiveGate.tokenIn(new String(body, StandardCharsets.UTF_8).strip());
      if (!exchange.getRequestMethod().equals("POST") || !gate.admits(exchange, token)) {
        refuse(exchange);
        return;
      }
      askStop.accept("STOP on the live page");
      send(
          exchange,
          200,
          "text/plain; charset=utf-8",
          "Stop asked for.\n".getBytes(StandardCharsets.UTF_8));
    }
  }

  /** Ends all connections after what is being answered has left. */
  @Override
  public void close() {
    pageThreads.shutdown();
    stopThreads.shutdown();
    try {
      pageThreads.awaitTermination(LONGEST_FAREWELL_MILLIS, TimeUnit.MILLISECONDS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    page.stop(0);
    stop.stop(0);
  }
}
