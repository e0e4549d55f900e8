package railglow.supply;

import java.util.Optional;
import java.util.SplittableRandom;
import railglow.observed.Edge;
import railglow.observed.OutputState;
import railglow.observed.SupplyReading;
import railglow.safety.OutputPermit;
import railglow.safety.PermitSlot;
import railglow.safety.Stop;
import railglow.safety.StopCause;
import railglow.safety.StopLatch;
import railglow.supply.FakeSupply.Fate;
import railglow.time.InventedClock;

/**
 * One random life of a keeper in invented time: permits come, lapse and change, stops come from
 * outside, the supply and the link fail, all of it between and in the middle of exchanges. Every
 * exchange is checked when it begins. The same seed gives the same life.
 */
final class KeeperHistory implements SupplyListener {
  private static final SupplyDescriptor DESCRIPTOR =
      Descriptors.withoutTimer(Descriptors.simulated());
  private static final StopCause[] CAUSES = StopCause.values();
  private static final int STEPS = 40;
  private static final int STEPS_TO_END = 400;

  private final SplittableRandom random;
  private final InventedClock clock = new InventedClock(1);
  private final StopLatch latch = new StopLatch();
  private final PermitSlot permits = new PermitSlot();
  private final FakeSupply supply;
  private final SupplyKeeper keeper;
  private final double troubleShare;
  private Stop firstStop;
  private boolean offSeenSinceStop;
  private boolean calm;
  private String violation = "";
  long exchanges;
  boolean switchedOn;

  KeeperHistory(long seed, boolean withoutTheCheckAfterOn) {
    random = new SplittableRandom(seed);
    supply = new FakeSupply(DESCRIPTOR, clock, 1 + random.nextInt(3));
    supply.tellsSwitchAtOnce = random.nextBoolean();
    supply.loadOhms = new double[] {0.02, 2, 6.8, 45, 1e6}[random.nextInt(5)];
    supply.dischargeSeconds = random.nextInt(32) == 0 ? 1 : 0.001;
    supply.volts = random.nextInt(4) * 2.0;
    supply.force(random.nextBoolean());
    supply.restoresOnClear = random.nextInt(4) == 0;
    supply.overCurrentTripped = random.nextInt(20) == 0;
    supply.interference = this::during;
    troubleShare = random.nextInt(3) == 0 ? 0 : 0.02;
    KeeperReports reports = new KeeperReports(this, latch);
    PermitService service =
        withoutTheCheckAfterOn
            ? new PermitService(
                supply, KeeperBench.PLAN, KeeperBench.ENVELOPE, permits, latch, reports, clock) {
              @Override
              boolean stopAfterOn() {
                return false;
              }
            }
            : new PermitService(
                supply, KeeperBench.PLAN, KeeperBench.ENVELOPE, permits, latch, reports, clock);
    keeper = new SupplyKeeper(supply, KeeperBench.PLAN, latch, clock, reports, service);
  }

  /** Lives the life; gives the first thing that must never happen, or nothing. */
  Optional<String> violation() {
    long next = clock.nanos();
    for (int i = 0; i < STEPS && next != SupplyKeeper.FINISHED && violation.isEmpty(); i++) {
      betweenSteps();
      next = step(next);
    }
    calm = true;
    supply.ignoresOff = false;
    supply.saysOff = false;
    supply.meterFails = false;
    supply.amperesOffset = 0;
    setLatch("the history ends");
    for (int i = 0; i < STEPS_TO_END && next != SupplyKeeper.FINISHED && violation.isEmpty(); i++) {
      next = step(next);
    }
    if (keeper.doubt().contains("turned down")) {
      return violation.isEmpty() ? Optional.empty() : Optional.of(violation);
    }
    must(next == SupplyKeeper.FINISHED, "with nothing wrong any more the keeper does not finish");
    must(!gives(), "the keeper has finished with the output on");
    must(keeper.outputState() == OutputState.PROVEN_OFF, "the keeper has finished without a proof");
    must(latch.stop().orElseThrow() == firstStop, "the first cause was overwritten");
    return violation.isEmpty() ? Optional.empty() : Optional.of(violation);
  }

  private long step(long next) {
    if (next - clock.nanos() > 0 && random.nextInt(10) < 8) {
      clock.advanceTo(next);
    }
    return keeper.step(clock.nanos());
  }

  private void betweenSteps() {
    switch (random.nextInt(12)) {
      case 0, 1, 2 -> postPermit();
      case 3 -> clock.advance(random.nextLong(300_000_000));
      case 4 -> supply.ignoresOff = trouble();
      case 5 -> supply.saysOff = supply.ignoresOff && trouble();
      case 6 -> supply.meterFails = trouble();
      case 7 -> supply.amperesOffset = trouble() ? 0.2 : 0;
      case 8 -> supply.loadOhms = trouble() ? 0.01 : supply.loadOhms;
      case 9 -> supply.overCurrentTripped |= trouble();
      default -> renewPermit();
    }
    if (random.nextInt(100) == 0) {
      setLatch("between steps");
    }
  }

  private boolean trouble() {
    return random.nextDouble() < 5 * troubleShare;
  }

  private void postPermit() {
    boolean on = random.nextInt(4) != 0;
    double level = random.nextInt(5) == 0 ? 0.5 : KeeperBench.LEVEL_VOLTS;
    long life = random.nextInt(6) == 0 ? random.nextLong(20_000_000) : 400_000_000;
    permits.post(new OutputPermit(random.nextInt(20), on, level, clock.nanos() + life), now());
  }

  private void renewPermit() {
    OutputPermit permit = permits.get();
    permits.post(permit.renewedUntil(clock.nanos() + 400_000_000), now());
  }

  private long now() {
    return clock.nanos();
  }

  private void setLatch(String where) {
    latch.set(CAUSES[random.nextInt(CAUSES.length)], clock.nanos(), where);
    firstStop = latch.stop().orElseThrow();
  }

  /** In the middle of an exchange, after its words were chosen and before they have any effect. */
  private Fate during(String words) {
    exchanges++;
    check(words);
    if (calm) {
      return Fate.NORMAL;
    }
    if (random.nextInt(150) == 0) {
      setLatch("during '" + words + "'");
    }
    if (random.nextInt(20) == 0) {
      postPermit();
    }
    if (random.nextDouble() < troubleShare / 2 && !supply.saysOff) {
      supply.force(random.nextBoolean());
    }
    if (random.nextDouble() >= troubleShare) {
      return Fate.NORMAL;
    }
    return Fate.values()[1 + random.nextInt(3)];
  }

  private void check(String words) {
    long begun = clock.nanos() - supply.exchangeNanos / 2;
    if (latch.isSet()) {
      firstStop = firstStop == null ? latch.stop().orElseThrow() : firstStop;
      must(
          offSeenSinceStop || words.equals("off"),
          "the first exchange after the stop is '" + words + "'");
      offSeenSinceStop = true;
      must(!words.equals("on"), "on was sent after a stop");
      must(
          !words.startsWith("volts ") || words.endsWith("?") || levelOf(words) <= supply.volts,
          "the level was raised after a stop by '" + words + "'");
    } else if (words.equals("on")) {
      switchedOn = true;
      OutputPermit permit = permits.get();
      must(keeper.isReady(), "on was sent before the start order was done");
      must(!permit.isLapsed(begun), "on was sent under a lapsed permit");
    } else if (!words.equals("off")) {
      must(
          !(permits.get().isLapsed(begun) && keeper.isReady()),
          "'" + words + "' was sent after the permit had lapsed");
    }
  }

  private static double levelOf(String words) {
    return Double.parseDouble(words.substring("volts ".length()));
  }

  /** An output that is on at a level of 0 V gives nothing, and nothing can tell it from off. */
  private boolean gives() {
    return supply.isTrulyOn() && supply.volts > 0;
  }

  private void must(boolean holds, String otherwise) {
    if (!holds && violation.isEmpty()) {
      violation = otherwise;
    }
  }

  @Override
  public void onReading(SupplyReading reading) {}

  @Override
  public void onEdge(Edge edge) {}

  @Override
  public void onOutputState(OutputState state, long nowNanos) {
    must(
        state != OutputState.PROVEN_OFF || !gives(),
        "proven off was claimed while the output was on");
  }
}
