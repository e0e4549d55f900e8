package railglow.supply;

import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import java.util.function.Consumer;
import railglow.link.PortLink;
import railglow.link.Transcript;
import railglow.live.Browser;
import railglow.live.LiveDoor;
import railglow.live.LiveFacts;
import railglow.live.LivePage;
import railglow.observed.OutputState;
import railglow.safety.Envelope;
import railglow.safety.OutputPermit;
import railglow.safety.PermitSlot;
import railglow.safety.StopCause;
import railglow.safety.StopLatch;
import railglow.time.MonotonicClock;
import railglow.time.Pause;
import railglow.time.StepRunner;
import railglow.time.SystemClock;

/**
 * Measures STOP on the live page, from the press in a real browser to "off" at the supply in
 * another process, while something hangs. See {@code docs/live-page.md} for the command.
 */
public final class PageStudy {
  private static final MonotonicClock CLOCK = SystemClock.INSTANCE;
  private static final Envelope ENVELOPE =
      Envelope.OPEN
          .withMaxVolts(2, "study")
          .withMaxAmperes(0.5, "study")
          .withMaxReadingAgeSeconds(2, "study");
  private static final int TABS = 8;
  private static final int DEAF = 60;
  private static final long SECOND = 1_000_000_000L;
  private final List<Double> total = new ArrayList<>();
  private final List<Double> browserShare = new ArrayList<>();
  private final List<Double> keeperShare = new ArrayList<>();
  private final List<Socket> deaf = new ArrayList<>();
  private final SplittableRandom random = new SplittableRandom(11);
  private volatile StopLatch latch = new StopLatch();
  private volatile long heardNanos;
  private int notCounted;

  private PageStudy() {}

  /**
   * @param args how many presses, {@code quiet}, {@code hung}, {@code stalled} or {@code viewers},
   *     the document to write the table into
   */
  public static void main(String[] args) throws Exception {
    List<String> rows = new PageStudy().stops(Integer.parseInt(args[0]), args[1]);
    rows.forEach(System.out::println);
    if (args.length > 2) {
      System.setProperty("fault.table", args[2]);
      FaultTable.write("stop " + args[1], rows);
    }
    System.exit(0);
  }

  /** A page on any port of this machine. */
  static LivePage page(Consumer<String> askStop) throws IOException {
    return LivePage.start(
        new LiveFacts("study", "rail", "pulses", 0.05, ENVELOPE, -273.15, 0.01, 0),
        LiveDoor.ofThisMachine(0),
        CLOCK,
        askStop);
  }

  private void heard(String who) {
    long now = CLOCK.nanos();
    if (heardNanos == 0) {
      heardNanos = now; // a click is heard once more as a submitted form
    }
    latch.set(StopCause.OPERATOR_REQUEST, now, who);
  }

  private List<String> stops(int presses, String condition) throws Exception {
    OtherProcessSupply other = new OtherProcessSupply();
    SupplyDescriptor descriptor = Descriptors.simulated();
    PortLink link =
        new PortLink(
            SupplyAddress.parse(other.address()).port(LineManners.USUAL, CLOCK),
            descriptor.wire().link(),
            CLOCK,
            Transcript.NONE);
    Path profile = Files.createTempDirectory("page-study");
    try (LivePage page = page(this::heard);
        Browser browser = new Browser(profile);
        StepRunner load = LoudRunner.of("cruncher", new PageLoad(CLOCK.nanos(), page));
        ScpiSupply supply = ScpiSupply.connect(link, descriptor, 1)) {
      load.start();
      browser.size(1400, 1000);
      browser.open(page.address());
      await("the page", () -> browser.words("state-words").equals("OUTPUT ON"));
      await("its frame", () -> browser.viewWords("volts").equals("1.000"));
      prepare(condition, browser, page);
      double[] middle = browser.middle("stop");
      int warm = Math.max(3, presses / 20);
      for (int i = 0; total.size() < presses; i++) {
        press(supply, other, browser, i % 2 == 0 ? null : middle, i >= warm);
      }
    } finally {
      other.close();
    }
    return List.of(
        row("from the press to off received", total),
        row("press, browser and its request", browserShare),
        row("our own: request heard to off received", keeperShare),
        String.format(
            Locale.ROOT,
            "| (%d presses, space bar and click in turn; %d over 100 ms; %d not counted) | | | | |",
            total.size(),
            total.stream().filter(millis -> millis > 100).count(),
            notCounted));
  }

  private void prepare(String condition, Browser browser, LivePage page) throws Exception {
    switch (condition) {
      case "hung" -> {
        browser.viewValue("setTimeout(() => { for (;;) {} }, 0); 1");
        await(
            "a frame that stands still",
            () -> browser.value("document.getElementById('still').hidden").equals("false"));
      }
      case "viewers" -> {
        for (int i = 0; i < TABS; i++) {
          browser.openBeside(page.address());
        }
        Pause.nanos(5 * SECOND);
      }
      case "stalled" -> {
        for (int i = 0; i < DEAF; i++) {
          deaf.add(askedForAPicture(page));
        }
        Pause.nanos(SECOND);
      }
      default -> Pause.nanos(SECOND);
    }
  }

  /** A viewer that asks for a picture and never reads it: a thread of the server hangs with it. */
  private static Socket askedForAPicture(LivePage page) throws IOException {
    Socket socket = new Socket();
    socket.setReceiveBufferSize(1024);
    socket.connect(new InetSocketAddress(InetAddress.getLoopbackAddress(), page.port()));
    String token = page.address().replaceAll(".*token=", "");
    socket
        .getOutputStream()
        .write(
            ("GET /picture/now?token="
                    + token
                    + " HTTP/1.1\r\nHost: 127.0.0.1:"
                    + page.port()
                    + "\r\n\r\n")
                .getBytes(StandardCharsets.US_ASCII));
    return socket;
  }

  private void press(
      Supply supply, OtherProcessSupply other, Browser browser, double[] at, boolean counts)
      throws Exception {
    latch = new StopLatch();
    heardNanos = 0;
    PermitSlot permits = new PermitSlot();
    OutputPlan plan =
        new OutputPlan(
            1, 0.4, OptionalDouble.of(1.2), OptionalDouble.of(0.6), OptionalDouble.of(2));
    SupplyKeeper keeper =
        new SupplyKeeper(supply, plan, ENVELOPE, permits, latch, SupplyListener.NONE, CLOCK);
    StepRunner runner = keeper.runner(LoudRunner::failed);
    latch.onSet(runner::wake);
    runner.start();
    await("a supply that is ready", () -> keeper.isReady() || latch.isSet());
    permits.post(new OutputPermit(0, true, 1, CLOCK.nanos() + 60 * SECOND));
    runner.wake();
    await("on", () -> keeper.outputState() == OutputState.ON || latch.isSet());
    other.tell("watch");
    other.hear();
    Pause.nanos(random.nextLong(120_000_000));
    long pressed = CLOCK.nanos();
    boolean early = latch.isSet();
    if (at == null) {
      browser.pressSpace();
    } else {
      browser.click(at);
    }
    long off = Long.parseLong(other.hear().split(" ")[1]);
    runner.awaitEnd(20 * SECOND);
    boolean byPage = latch.stop().orElseThrow().cause() == StopCause.OPERATOR_REQUEST;
    if (early || !byPage) {
      notCounted++;
    } else if (counts) {
      total.add((off - pressed) / 1e6);
      browserShare.add((heardNanos - pressed) / 1e6);
      keeperShare.add((off - heardNanos) / 1e6);
    }
    // A click is heard once more as a submitted form; it must not stop the next one.
    Pause.nanos(SECOND / 5);
  }

  /** Something that is waited for. */
  interface Check {
    boolean holds() throws Exception;
  }

  static void await(String what, Check check) throws Exception {
    for (int i = 0; !check.holds(); i++) {
      if (i > 6000) {
        throw new IllegalStateException("waited in vain for " + what);
      }
      Pause.nanos(5_000_000);
    }
  }

  private static String row(String what, List<Double> millis) {
    double[] sorted = NearestRank.sorted(millis);
    return String.format(
        Locale.ROOT,
        "| %s | %.1f | %.1f | %.1f | %.1f |",
        what,
        NearestRank.at(sorted, 0.5),
        NearestRank.at(sorted, 0.9),
        NearestRank.at(sorted, 0.99),
        sorted[sorted.length - 1]);
  }
}
