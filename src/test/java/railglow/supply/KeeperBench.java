package railglow.supply;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import railglow.observed.Edge;
import railglow.observed.OutputState;
import railglow.observed.SupplyReading;
import railglow.safety.Envelope;
import railglow.safety.OutputPermit;
import railglow.safety.PermitSlot;
import railglow.safety.Stop;
import railglow.safety.StopLatch;
import railglow.time.InventedClock;

/** A keeper with everything around it, stepped by hand in invented time. */
final class KeeperBench implements SupplyListener {
  static final double LEVEL_VOLTS = 1;
  static final double LIMIT_AMPERES = 0.5;
  static final OutputPlan PLAN =
      new OutputPlan(
          LEVEL_VOLTS,
          LIMIT_AMPERES,
          OptionalDouble.of(1.2),
          OptionalDouble.of(0.55),
          OptionalDouble.empty());
  static final Envelope ENVELOPE =
      Envelope.OPEN
          .withMaxVolts(2, "test")
          .withMaxAmperes(LIMIT_AMPERES, "test")
          .withMaxWatts(1, "test")
          .withMaxJoules(100, "test")
          .withMaxReadingAgeSeconds(0.5, "test");

  final InventedClock clock = new InventedClock(1_000);
  final StopLatch latch = new StopLatch();
  final PermitSlot permits = new PermitSlot();
  final List<SupplyReading> readings = new ArrayList<>();
  final List<Edge> edges = new ArrayList<>();
  final List<OutputState> states = new ArrayList<>();
  final List<Stop> further = new ArrayList<>();
  final List<String> warnings = new ArrayList<>();
  final FakeSupply supply;
  final SupplyKeeper keeper;
  long nextNanos;

  KeeperBench() {
    this(1, ENVELOPE);
  }

  KeeperBench(int readingParts, Envelope envelope) {
    supply = new FakeSupply(Descriptors.withoutTimer(Descriptors.simulated()), clock, readingParts);
    keeper = new SupplyKeeper(supply, PLAN, envelope, permits, latch, this, clock);
    nextNanos = clock.nanos();
  }

  /** Steps at the times the keeper asks for, until it is ready for permits. */
  KeeperBench started() {
    for (int i = 0; i < 50 && !keeper.isReady() && !latch.isSet(); i++) {
      step();
    }
    supply.exchanges.clear();
    return this;
  }

  /** Started, with the output on under a permit of ten seconds. */
  KeeperBench on() {
    started();
    permit(true, 10);
    step();
    return this;
  }

  void permit(boolean on, double seconds) {
    permits.post(new OutputPermit(0, on, LEVEL_VOLTS, clock.nanos() + Math.round(seconds * 1e9)));
    nextNanos = clock.nanos();
  }

  /** One step at the time the keeper asked for. */
  void step() {
    if (nextNanos > clock.nanos() && nextNanos != SupplyKeeper.FINISHED) {
      clock.advance(nextNanos - clock.nanos());
    }
    nextNanos = keeper.step(clock.nanos());
  }

  void run(double seconds) {
    long end = clock.nanos() + Math.round(seconds * 1e9);
    while (nextNanos < end && nextNanos != SupplyKeeper.FINISHED) {
      step();
    }
  }

  boolean finished() {
    return nextNanos == SupplyKeeper.FINISHED;
  }

  Stop stop() {
    return latch.stop().orElseThrow();
  }

  @Override
  public void onReading(SupplyReading reading) {
    readings.add(reading);
  }

  @Override
  public void onEdge(Edge edge) {
    edges.add(edge);
  }

  @Override
  public void onOutputState(OutputState state, long nowNanos) {
    states.add(state);
  }

  @Override
  public void onFurtherBreach(Stop stop) {
    further.add(stop);
  }

  @Override
  public void onWarning(String sentence, long nowNanos) {
    warnings.add(sentence);
  }
}
