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
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
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
  /** The one thing that can be asked for. */
  static final String STOP = "/stop";

  private static final int PORTS_TRIED = 20;
  private static final int LONGEST_BODY = 4096;
  private static final long LONGEST_FAREWELL_MILLIS = 500;
  private static final int FORBIDDEN = 403;
  private static final int NOT_FOUND = 404;
  private static final int NO_CONTENT = 204;
  private static final String PAGE_POLICY =
      "default-src 'none'; script-src 'self'; style-src 'self'; connect-src 'self' %1$s;"
          + " form-action %1$s; frame-src 'self' %1$s %2$s; base-uri 'none'; frame-ancestors 'none'";
  private static final String VIEW_POLICY =
      "default-src 'none'; script-src 'self'; worker-src 'self'; style-src 'self'; connect-src"
          + " 'self' %1$s; base-uri 'none'; frame-ancestors 'self' %2$s";

  static {
    // Answers leave at once, and a request that never ends gives its thread back.
    setUnlessSet("sun.net.httpserver.nodelay", "true");
    setUnlessSet("sun.net.httpserver.maxReqTime", "20");
  }

  private final LiveGate gate = new LiveGate();
  private final LiveDoor door;
  private final LiveContent content;
  private final Consumer<String> askStop;
  private final Map<String, Answer> routes = routes();
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
    page.createContext(STOP, this::serveStop);
    stop.setExecutor(stopThreads);
    stop.createContext(STOP, this::serveStop);
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

  /** Everything that is served: all of it only reads. */
  private Map<String, Answer> routes() {
    Map<String, Answer> routes = new TreeMap<>();
    routes.put("/", exchange -> serveHtml(exchange, "page.html", PAGE_POLICY));
    routes.put("/view", exchange -> serveHtml(exchange, "view.html", VIEW_POLICY));
    routes.put("/page.css", exchange -> resource(exchange, "page.css", "text/css"));
    for (String script : List.of("page.js", "sounds.js", "view.js", "worker.js")) {
      routes.put("/" + script, exchange -> resource(exchange, script, "text/javascript"));
    }
    routes.put("/brief", exchange -> json(exchange, content.brief()));
    routes.put("/facts", exchange -> json(exchange, content.facts()));
    routes.put("/sounds", exchange -> json(exchange, content.sounds()));
    routes.put("/state", exchange -> json(exchange, content.stateSince(seen(exchange))));
    routes.put("/picture/now", exchange -> packet(exchange, content.picture(false)));
    routes.put("/picture/difference", exchange -> packet(exchange, content.picture(true)));
    return Collections.unmodifiableMap(routes);
  }

  /** The paths that are served; beside them there is {@link #STOP} and nothing else. */
  Set<String> paths() {
    return routes.keySet();
  }

  private void servePage(HttpExchange exchange) throws IOException {
    Answer answer = routes.get(exchange.getRequestURI().getPath());
    if (answer == null) {
      exchange.sendResponseHeaders(NOT_FOUND, -1);
    } else {
      answer.to(exchange);
    }
  }

  private static long seen(HttpExchange exchange) {
    String seen = LiveGate.valueIn(exchange.getRequestURI().getRawQuery(), "seen");
    return seen != null && seen.matches("[0-9]{1,12}") ? Long.parseLong(seen) : 0;
  }

  private void serveHtml(HttpExchange exchange, String name, String policy) throws IOException {
    String host = exchange.getRequestHeaders().getFirst("Host").replaceFirst(":[0-9]+$", "");
    String other = origin(door.otherHost(host));
    exchange
        .getResponseHeaders()
        .set("Content-Security-Policy", String.format(policy, stopOrigin(), asSource(other)));
    String html =
        new String(read(name), StandardCharsets.UTF_8)
            .replace("{token}", gate.token())
            .replace("{stop}", stopOrigin() + STOP)
            .replace("{other}", other);
    send(exchange, 200, "text/html; charset=utf-8", html.getBytes(StandardCharsets.UTF_8));
  }

  /**
   * As a policy names it. Its grammar has no address in brackets (W3C Content Security Policy Level
   * 3, 2.3.1, host-part), so for those only the scheme can be given.
   */
  private static String asSource(String origin) {
    return origin.contains("[") ? "http:" : origin;
  }

  private static void resource(HttpExchange exchange, String name, String type) throws IOException {
    send(exchange, 200, type + "; charset=utf-8", read(name));
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
