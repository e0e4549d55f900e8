package railglow.supply;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import railglow.link.PortLink;
import railglow.link.Transcript;
import railglow.observed.Edge;
import railglow.observed.OutputState;
import railglow.observed.SupplyReading;
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
 * Measures how long a current above the limit lasts: from the true moment it passed the limit to
 * the arrival of "off" at the supply, over many trips, and what that time is made of. See {@code
 * docs/stop-latency.md} for the command.
 */
public final class StopLatency implements SupplyListener, Transcript {
  private static final MonotonicClock CLOCK = SystemClock.INSTANCE;
  private static final Envelope ENVELOPE =
      Envelope.OPEN
          .withMaxVolts(2, "benchmark")
          .withMaxAmperes(StopLatencySupply.LIMIT_AMPERES, "benchmark")
          .withMaxReadingAgeSeconds(0.5, "benchmark");
  private static final long MOST_WAIT_NANOS = 60_000_000;
  private final List<Double> total = new ArrayList<>();
  private final List<Double> waiting = new ArrayList<>();
  private final List<Double> exchange = new ArrayList<>();
  private final List<Double> own = new ArrayList<>();
  private final List<Double> wire = new ArrayList<>();
  private final SplittableRandom random = new SplittableRandom(7);
  private volatile long readingEndNanos;
  private volatile long offSentNanos;
  private int otherwise;

  private StopLatency() {}

  /**
   * @param args number of trips; {@code tcp}, {@code terminal} or {@code all}; whether frames are
   *     processed beside ({@code load} or {@code idle}; left out with {@code all}); the document to
   *     write the tables into
   */
  public static void main(String[] args) throws Exception {
    int trips = Integer.parseInt(args[0]);
    boolean all = args[1].equals("all");
    int next = all ? 2 : 3;
    if (args.length > next) {
      System.setProperty("fault.table", args[next]);
    }
    List<String> tables =
        all ? List.of("tcp load", "terminal load", "tcp idle") : List.of(args[1] + " " + args[2]);
    for (String table : tables) {
      System.out.println(table);
      List<String> rows =
          new StopLatency().measure(trips, table.startsWith("terminal"), table.endsWith("load"));
      rows.forEach(System.out::println);
      FaultTable.write(table, rows);
    }
    System.exit(0);
  }

  private List<String> measure(int trips, boolean terminal, boolean load) throws Exception {
    Path folder = Files.createTempDirectory("stop-latency");
    Path device = folder.resolve("supply");
    OtherProcessSupply other =
        terminal ? new OtherProcessSupply(device.toString()) : new OtherProcessSupply();
    BareClient bare = new BareClient(other.echoPort());
    Thread bareThread = new Thread(bare, "bare-client");
    bareThread.start();
    FrameLoad frames = new FrameLoad(CLOCK.nanos());
    StepRunner loading = LoudRunner.of("cruncher", frames);
    if (load) {
      loading.start();
    }
    String address = terminal ? "serial:" + device : other.address();
    SupplyDescriptor descriptor = Descriptors.simulated();
    PortLink link =
        new PortLink(
            SupplyAddress.parse(address).port(descriptor.line().orElseThrow(), CLOCK),
            descriptor.wire().link(),
            CLOCK,
            this);
    ScpiSupply supply = ScpiSupply.connect(link, descriptor, 1);
    for (int i = 0; total.size() < trips; i++) {
      trip(supply, other, i >= trips / 20);
    }
    bare.end();
    bareThread.join();
    loading.close();
    supply.close();
    other.close();
    return rows(bare, descriptor, load ? frames : null);
  }

  private void trip(Supply supply, OtherProcessSupply other, boolean counts) throws IOException {
    StopLatch latch = new StopLatch();
    PermitSlot permits = new PermitSlot();
    OutputPlan plan =
        new OutputPlan(
            1, 0.5, OptionalDouble.of(1.2), OptionalDouble.of(0.6), OptionalDouble.of(2));
    SupplyKeeper keeper = new SupplyKeeper(supply, plan, ENVELOPE, permits, latch, this, CLOCK);
    StepRunner runner = keeper.runner(LoudRunner::failed);
    latch.onSet(runner::wake);
    runner.start();
    while (!keeper.isReady() && !latch.isSet()) {
      Pause.nanos(2_000_000);
    }
    permits.post(new OutputPermit(0, true, 1, CLOCK.nanos() + 20_000_000_000L));
    runner.wake();
    while (keeper.outputState() != OutputState.ON && !latch.isSet()) {
      Pause.nanos(2_000_000);
    }
    other.tell(Long.toString(random.nextLong(MOST_WAIT_NANOS)));
    if (!runner.awaitEnd(20_000_000_000L)) {
      throw new IllegalStateException("no stop within 20 s: " + keeper.doubt());
    }
    other.tell("clear");
    String told = "";
    for (String line = other.hear(); !line.equals("cleared"); line = other.hear()) {
      told = line;
    }
    boolean byCurrent = latch.stop().orElseThrow().cause() == StopCause.CURRENT_ABOVE_LIMIT;
    if (!byCurrent || told.isEmpty()) {
      otherwise++;
    } else if (counts) {
      String[] words = told.split(" ");
      long above = Long.parseLong(words[1]);
      long asked = Long.parseLong(words[2]);
      long off = Long.parseLong(words[3]);
      total.add((off - above) / 1e6);
      waiting.add((asked - above) / 1e6);
      exchange.add((readingEndNanos - asked) / 1e6);
      own.add((offSentNanos - readingEndNanos) / 1e6);
      wire.add((off - offSentNanos) / 1e6);
    }
  }

  private List<String> rows(BareClient bare, SupplyDescriptor descriptor, FrameLoad frames) {
    List<String> rows = new ArrayList<>();
    rows.add(row("from the true crossing to off received", total));
    rows.add(row("waiting for the reading", waiting));
    rows.add(row("the exchange of the reading", exchange));
    rows.add(row("our own share: reading complete to off written", own));
    rows.add(row("off on its way (negative: received before our write returned)", wire));
    rows.add(row("bare loopback round trip", bare.roundTripMillis()));
    rows.add(row("bare thread with a timer: how late it wakes", bare.lateMillis()));
    double interval = descriptor.wire().readingIntervalNanos() / 1e6;
    rows.add(ratio(own, bare.lateMillis()));
    rows.add(beyond(interval));
    rows.add(
        String.format(
            Locale.ROOT,
            "| (%d trips; %d more ended by another cause; readings every %d ms%s)" + " | | | | | |",
            total.size(),
            otherwise,
            descriptor.wire().readingIntervalNanos() / 1_000_000,
            frames == null
                ? ""
                : "; " + frames.frames() + " frames of 640 x 512, " + frames.looks() + " looks"));
    return rows;
  }

  /** The goal for our own share: at most 0.5 ms, and in the tail 1.5 times the bare thread's. */
  private static String ratio(List<Double> own, List<Double> bare) {
    double[] ours = NearestRank.sorted(own);
    double[] theirs = NearestRank.sorted(bare);
    return String.format(
        Locale.ROOT,
        "| our own share over the bare thread's lateness, times | %.2f | %.2f | %.2f | %.2f | %.2f |",
        NearestRank.at(ours, 0.5) / NearestRank.at(theirs, 0.5),
        NearestRank.at(ours, 0.9) / NearestRank.at(theirs, 0.9),
        NearestRank.at(ours, 0.99) / NearestRank.at(theirs, 0.99),
        NearestRank.at(ours, 0.999) / NearestRank.at(theirs, 0.999),
        ours[ours.length - 1] / theirs[theirs.length - 1]);
  }

  /** The goal for the whole: one reading interval, one exchange with off on its way, our share. */
  private String beyond(double intervalMillis) {
    int late = 0;
    double most = 0;
    for (double wait : waiting) {
      late += wait > intervalMillis ? 1 : 0;
      most = Math.max(most, wait - intervalMillis);
    }
    return String.format(
        Locale.ROOT,
        "| (trips beyond one reading interval of %.0f ms, one exchange and our own share: %d of"
            + " %d%s) | | | | | |",
        intervalMillis,
        late,
        waiting.size(),
        late == 0 ? "" : String.format(Locale.ROOT, ", by %.1f ms at most", most));
  }

  private static String row(String what, List<Double> millis) {
    double[] sorted = NearestRank.sorted(millis);
    return String.format(
        Locale.ROOT,
        "| %s | %.3f | %.3f | %.3f | %.3f | %.3f |",
        what,
        NearestRank.at(sorted, 0.5),
        NearestRank.at(sorted, 0.9),
        NearestRank.at(sorted, 0.99),
        NearestRank.at(sorted, 0.999),
        sorted[sorted.length - 1]);
  }

  @Override
  public void onReading(SupplyReading reading) {
    if (reading.amperes() > StopLatencySupply.LIMIT_AMPERES) {
      readingEndNanos = reading.endNanos();
      offSentNanos = 0;
    }
  }

  @Override
  public void onEdge(Edge edge) {}

  @Override
  public void onOutputState(OutputState state, long nowNanos) {}

  @Override
  public void sent(long nowNanos, byte[] bytes, int length) {
    if (offSentNanos == 0 && new String(bytes, StandardCharsets.US_ASCII).contains("OUTP OFF")) {
      offSentNanos = nowNanos;
    }
  }

  @Override
  public void received(long nowNanos, byte[] bytes, int length) {}

  @Override
  public void note(long nowNanos, String text) {}
}
