package railglow.live;

import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.io.InputStream;
import java.net.BindException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.charset.StandardCharsets;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import railglow.observed.Frame;
import railglow.run.RunEnding;
import railglow.run.RunProgress;
import railglow.run.RunWatcher;
import railglow.thermal.Look;

/**
 * A page on this machine that shows a run as it goes and can ask for a stop, and nothing else. STOP
 * has a listener and threads of its own, so that it is served when all else hangs.
 *
 * <p>Thread-safe; nothing it is told waits for a viewer.
 */
public final class LivePage implements RunWatcher, AutoCloseable {
  /** The first port tried; the next free one is taken when it is not free. */
  public static final int USUAL_PORT = 8075;

  private static final int PORTS_TRIED = 20;
  private static final int LONGEST_BODY = 4096;
  private static final long LONGEST_FAREWELL_MILLIS = 500;
  private static final int FORBIDDEN = 403;
  private static final String POLICY =
      "default-src 'none'; script-src 'self'; worker-src 'self'; style-src 'self'; connect-src"
          + " 'self' %1$s; form-action %1$s; frame-src %1$s; base-uri 'none'; frame-ancestors"
          + " 'none'";

  private final LiveGate gate = new LiveGate();
  private final LiveViewers viewers = new LiveViewers();
  private final LiveRecord record;
  private final LivePictures pictures;
  private final Consumer<String> askStop;
  private final HttpServer page;
  private final HttpServer stop;
  private final ExecutorService pageThreads = threads("live-page", false);
  private final ExecutorService stopThreads = threads("live-stop", true);

  private LivePage(LiveFacts facts, Consumer<String> askStop, HttpServer page, HttpServer stop) {
    this.askStop = askStop;
    this.page = page;
    this.stop = stop;
    record = new LiveRecord(facts);
    pictures = new LivePictures(facts);
    gate.serve(page.getAddress().getPort(), stop.getAddress().getPort());
    page.setExecutor(pageThreads);
    page.createContext("/", guarded(this::servePage));
    stop.setExecutor(stopThreads);
    stop.createContext("/stop", this::serveStop);
    page.createContext("/stop", this::serveStop);
  }

  /**
   * Starts serving on the loopback interface.
   *
   * @param firstPort tried first, then those above it; 0 for any that is free
   * @param askStop called with who asked, on a thread of its own; must return at once
   * @throws IOException when no port can be had
   */
  public static LivePage start(LiveFacts facts, int firstPort, Consumer<String> askStop)
      throws IOException {
    HttpServer page = bind(firstPort);
    HttpServer stop = bind(0);
    LivePage live = new LivePage(facts, askStop, page, stop);
    page.start();
    stop.start();
    return live;
  }

  private static HttpServer bind(int firstPort) throws IOException {
    InetAddress loopback = InetAddress.getByAddress(new byte[] {127, 0, 0, 1});
    for (int i = 0; i < PORTS_TRIED; i++) {
      try {
        int port = firstPort == 0 ? 0 : firstPort + i;
        return HttpServer.create(new InetSocketAddress(loopback, port), 0);
      } catch (BindException e) {
        continue;
      }
    }
    return HttpServer.create(new InetSocketAddress(loopback, 0), 0);
  }

  private static ExecutorService threads(String name, boolean few) {
    java.util.concurrent.ThreadFactory factory =
        work -> {
          Thread thread = new Thread(work, name);
          thread.setDaemon(true);
          return thread;
        };
    return few ? Executors.newFixedThreadPool(2, factory) : Executors.newCachedThreadPool(factory);
  }

  /** The address to open, with the token of this run. */
  public String address() {
    return "http://127.0.0.1:" + port() + "/?token=" + gate.token();
  }

  public int port() {
    return page.getAddress().getPort();
  }

  /** How many watch at the moment. */
  public int viewers() {
    return viewers.count();
  }

  private String stopOrigin() {
    return "http://127.0.0.1:" + stop.getAddress().getPort();
  }

  /** What answers an admitted request. */
  private interface Answer {
    void to(HttpExchange exchange) throws IOException;
  }

  private com.sun.net.httpserver.HttpHandler guarded(Answer answer) {
    return exchange -> {
      try (exchange) {
        exchange.getResponseHeaders().set("Cache-Control", "no-store");
        exchange.getResponseHeaders().set("Referrer-Policy", "strict-origin");
        exchange.getResponseHeaders().set("X-Content-Type-Options", "nosniff");
        String token = LiveGate.tokenIn(exchange.getRequestURI().getRawQuery());
        if (!gate.admits(exchange, token) || !exchange.getRequestMethod().equals("GET")) {
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
    switch (exchange.getRequestURI().getPath()) {
      case "/" -> serveHtml(exchange);
      case "/page.css" -> resource(exchange, "page.css", "text/css; charset=utf-8");
      case "/page.js" -> resource(exchange, "page.js", "text/javascript; charset=utf-8");
      case "/worker.js" -> resource(exchange, "worker.js", "text/javascript; charset=utf-8");
      case "/events" -> serveEvents(exchange);
      case "/picture/now" -> packet(exchange, pictures.now());
      case "/picture/difference" -> packet(exchange, pictures.difference());
      default -> exchange.sendResponseHeaders(404, -1);
    }
  }

  private void serveHtml(HttpExchange exchange) throws IOException {
    exchange
        .getResponseHeaders()
        .set("Content-Security-Policy", String.format(POLICY, stopOrigin()));
    String html =
        new String(read("page.html"), StandardCharsets.UTF_8)
            .replace("{token}", gate.token())
            .replace("{stop}", stopOrigin() + "/stop");
    send(exchange, 200, "text/html; charset=utf-8", html.getBytes(StandardCharsets.UTF_8));
  }

  private void resource(HttpExchange exchange, String name, String type) throws IOException {
    send(exchange, 200, type, read(name));
  }

  private static byte[] read(String name) throws IOException {
    try (InputStream in = LivePage.class.getResourceAsStream(name)) {
      return in.readAllBytes();
    }
  }

  private void serveEvents(HttpExchange exchange) throws IOException {
    exchange.getResponseHeaders().set("Content-Type", "text/event-stream; charset=utf-8");
    exchange.sendResponseHeaders(200, 0);
    viewers.serve(exchange, record.hello());
  }

  private static void packet(HttpExchange exchange, byte[] packet) throws IOException {
    if (packet == null) {
      exchange.sendResponseHeaders(204, -1);
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

  @Override
  public void onProgress(RunProgress progress) {
    viewers.send("state", record.onProgress(progress, pictures.frameNumber()));
  }

  @Override
  public void onMessage(String sentence) {
    viewers.send("message", record.onMessage(sentence));
  }

  @Override
  public void onFrame(Frame frame) {
    if (viewers.any()) {
      pictures.onFrame(frame);
    }
  }

  @Override
  public void onLook(Look look) {
    pictures.onLook(look);
    viewers.send("state", record.onLook(look));
  }

  @Override
  public void onEnded(RunEnding ending) {
    viewers.send("state", record.onEnded(ending));
  }

  /** Ends all connections after what was sent has left. */
  @Override
  public void close() {
    viewers.end();
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
