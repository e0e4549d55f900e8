package railglow.live;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.net.http.WebSocket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionStage;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Stream;

/** A real headless browser with one page, driven over its debugging port. */
public final class Browser implements AutoCloseable {
  private static final Path PROGRAM = Path.of("/usr/bin/chromium");
  private static final long VIEW_PATIENCE_SECONDS = 2;
  private static final long PATIENCE_SECONDS = 30;
  private final ObjectMapper json = new ObjectMapper();
  private final HttpClient http = HttpClient.newHttpClient();
  private final Map<Integer, CompletableFuture<JsonNode>> answers = new ConcurrentHashMap<>();
  private final AtomicInteger lastId = new AtomicInteger();
  private final List<String> beside = new CopyOnWriteArrayList<>();
  private volatile String viewSession = "";
  private final Process process;
  private final WebSocket socket;

  public static boolean isInstalled() {
    return Files.isExecutable(PROGRAM);
  }

  public Browser(Path profile) throws Exception {
    process =
        new ProcessBuilder(
                PROGRAM.toString(),
                "--headless=new",
                "--no-sandbox",
                "--disable-gpu",
                "--disable-dev-shm-usage",
                "--disable-background-networking",
                "--no-first-run",
                "--remote-debugging-port=0",
                "--user-data-dir=" + profile)
            .redirectErrorStream(true)
            .start();
    String port = debuggingPort();
    HttpRequest newPage =
        HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + port + "/json/new?about:blank"))
            .PUT(HttpRequest.BodyPublishers.noBody())
            .build();
    JsonNode page = json.readTree(http.send(newPage, HttpResponse.BodyHandlers.ofString()).body());
    socket =
        http.newWebSocketBuilder()
            .buildAsync(URI.create(page.get("webSocketDebuggerUrl").asText()), new Listener())
            .get(PATIENCE_SECONDS, TimeUnit.SECONDS);
    command("Page.enable", json.createObjectNode());
    command(
        "Target.setAutoAttach",
        parameters()
            .put("autoAttach", true)
            .put("waitForDebuggerOnStart", false)
            .put("flatten", true));
  }

  private String debuggingPort() throws IOException {
    BufferedReader reader =
        new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8));
    for (String line = reader.readLine(); line != null; line = reader.readLine()) {
      if (line.contains("DevTools listening on ws://")) {
        Thread drain = new Thread(() -> reader.lines().forEach(ignored -> {}), "browser-output");
        drain.setDaemon(true);
        drain.start();
        return line.replaceAll(".*ws://[^:]+:([0-9]+)/.*", "$1");
      }
    }
    throw new IOException("the browser did not start");
  }

  JsonNode command(String method, ObjectNode parameters) throws Exception {
    return command(method, parameters, "");
  }

  private JsonNode command(String method, ObjectNode parameters, String session) throws Exception {
    int id = lastId.incrementAndGet();
    CompletableFuture<JsonNode> answer = new CompletableFuture<>();
    answers.put(id, answer);
    ObjectNode message = json.createObjectNode().put("id", id).put("method", method);
    message.set("params", parameters);
    if (!session.isEmpty()) {
      message.put("sessionId", session);
    }
    socket.sendText(json.writeValueAsString(message), true).join();
    long patience = session.isEmpty() ? PATIENCE_SECONDS : VIEW_PATIENCE_SECONDS;
    JsonNode result = answer.get(patience, TimeUnit.SECONDS);
    if (result.has("error")) {
      throw new IOException(method + ": " + result.get("error"));
    }
    return result.get("result");
  }

  ObjectNode parameters() {
    return json.createObjectNode();
  }

  public void open(String address) throws Exception {
    command("Page.navigate", parameters().put("url", address));
  }

  /** The value of an expression, as text. */
  public String value(String expression) throws Exception {
    return value(expression, "");
  }

  /**
   * The value of an expression in the frame of pictures and readings, which has a process of its
   * own; empty while there is none.
   */
  public String viewValue(String expression) throws Exception {
    String session = viewSession;
    try {
      return session.isEmpty() ? "" : value(expression, session);
    } catch (IOException e) {
      if (e.getMessage().contains("Session with given id not found")) {
        return ""; // it has just been replaced by that of a new page
      }
      throw e;
    } catch (TimeoutException e) {
      return ""; // a question to a frame that goes away is never answered
    }
  }

  private String value(String expression, String session) throws Exception {
    JsonNode result =
        command(
                "Runtime.evaluate",
                parameters()
                    .put("expression", expression)
                    .put("returnByValue", true)
                    .put("awaitPromise", true),
                session)
            .get("result");
    return result.has("value") ? result.get("value").asText() : result.toString();
  }

  /** The words a visitor sees in an element; empty while there is none. */
  public String words(String id) throws Exception {
    return value(wordsOf(id));
  }

  /** The same in the frame of pictures and readings. */
  public String viewWords(String id) throws Exception {
    return viewValue(wordsOf(id));
  }

  private static String wordsOf(String id) {
    return "(document.getElementById('" + id + "') || {textContent: ''}).textContent";
  }

  public void size(int width, int height) throws Exception {
    command(
        "Emulation.setDeviceMetricsOverride",
        parameters()
            .put("width", width)
            .put("height", height)
            .put("deviceScaleFactor", 1)
            .put("mobile", false));
  }

  void scheme(String name) throws Exception {
    ObjectNode parameters = parameters();
    parameters
        .putArray("features")
        .addObject()
        .put("name", "prefers-color-scheme")
        .put("value", name);
    command("Emulation.setEmulatedMedia", parameters);
  }

  byte[] screenshot() throws Exception {
    return Base64.getDecoder()
        .decode(
            command("Page.captureScreenshot", parameters().put("format", "png"))
                .get("data")
                .asText());
  }

  /** Closes the tabs that {@link #openBeside} opened. */
  void closeOthers() throws Exception {
    for (String id : beside) {
      command("Target.closeTarget", parameters().put("targetId", id));
    }
    beside.clear();
  }

  public void pressSpace() throws Exception {
    press(" ", "Space", 32);
  }

  /** A key: what it writes, its place on the keyboard, and its number. */
  void press(String text, String code, int number) throws Exception {
    ObjectNode key =
        parameters()
            .put("type", "keyDown")
            .put("key", text)
            .put("code", code)
            .put("windowsVirtualKeyCode", number)
            .put("text", text);
    command("Input.dispatchKeyEvent", key);
    command("Input.dispatchKeyEvent", key.deepCopy().put("type", "keyUp"));
  }

  /** A click in the middle of an element. */
  void click(String id) throws Exception {
    click(middle(id));
  }

  /** Where the middle of an element is: to the right and down. */
  public double[] middle(String id) throws Exception {
    String box = "document.getElementById('" + id + "').getBoundingClientRect()";
    return new double[] {
      Double.parseDouble(value(box + ".x + " + box + ".width / 2")),
      Double.parseDouble(value(box + ".y + " + box + ".height / 2"))
    };
  }

  /** Opens one more tab that stays in the background. */
  public void openBeside(String address) throws Exception {
    JsonNode made =
        command("Target.createTarget", parameters().put("url", address).put("background", true));
    beside.add(made.get("targetId").asText());
  }

  public void click(double[] place) throws Exception {
    for (String type : new String[] {"mousePressed", "mouseReleased"}) {
      command(
          "Input.dispatchMouseEvent",
          parameters()
              .put("type", type)
              .put("x", place[0])
              .put("y", place[1])
              .put("button", "left")
              .put("clickCount", 1));
    }
  }

  @Override
  public void close() {
    socket.abort();
    // those that it has started may write into the profile for a while after it
    List<ProcessHandle> all =
        Stream.concat(Stream.of(process.toHandle()), process.descendants()).toList();
    process.destroy();
    process.onExit().completeOnTimeout(process, 5, TimeUnit.SECONDS).join();
    all.forEach(ProcessHandle::destroyForcibly);
    all.forEach(one -> one.onExit().join());
  }

  private final class Listener implements WebSocket.Listener {
    private final StringBuilder text = new StringBuilder();

    @Override
    public CompletionStage<?> onText(WebSocket from, CharSequence data, boolean last) {
      text.append(data);
      if (last) {
        try {
          JsonNode message = json.readTree(text.toString());
          if (message.has("id")) {
            answers.remove(message.get("id").asInt()).complete(message);
          } else if (message.path("method").asText().equals("Target.attachedToTarget")
              && message.at("/params/targetInfo/type").asText().equals("iframe")) {
            viewSession = message.at("/params/sessionId").asText();
          } else if (message.path("method").asText().equals("Target.detachedFromTarget")
              && message.at("/params/sessionId").asText().equals(viewSession)) {
            viewSession = "";
          }
        } catch (IOException e) {
          answers.values().forEach(answer -> answer.completeExceptionally(e));
        }
        text.setLength(0);
      }
      from.request(1);
      return null;
    }
  }
}
