package railglow.supply;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import railglow.observed.OutputState;
import railglow.pulse.PulseSequence;
import railglow.pulse.Timeline;
import railglow.run.Conductor;
import railglow.run.RunEnding;
import railglow.safety.Envelope;
import railglow.safety.PermitSlot;
import railglow.safety.StopCause;
import railglow.safety.StopLatch;
import railglow.sim.BenchScenario;
import railglow.sim.BenchScenarios;
import railglow.sim.fault.FaultSpec;
import railglow.sim.wire.SupplySettings;
import railglow.time.Pause;
import railglow.time.StepRunner;

/** One pulsed run of keeper and conductor over a real wire, with one thing that goes wrong. */
final class FaultRun {
  private static final PulseSequence SEQUENCE =
      new PulseSequence("faults", "test", 1, 0.5, 0.8, 4, 4, false, 0.5, 0.3, 0.05, 80, 40);

  /** Slow enough for a line of 9600 baud and one question in each message. */
  private static final PulseSequence SLOW_SEQUENCE =
      new PulseSequence("ways", "test", 1, 0.5, 3, 2, 2, false, 0.5, 0.3, 0.05, 80, 40);

  private static final Envelope ENVELOPE =
      Envelope.OPEN
          .withMaxVolts(2, "test bench")
          .withMaxAmperes(0.5, "test bench")
          .withMaxWatts(1, "test bench");
  private static final long PATIENCE_NANOS = 4_000_000_000L;

  /**
   * What came of it.
   *
   * @param offMillis from the latch to the first "off" that arrived after it; NaN when none did
   * @param trulyOn the truth at the end
   * @param timesOn how often each channel was truly seen on
   */
  record Outcome(RunEnding ending, double offMillis, boolean trulyOn, List<Integer> timesOn) {}

  private final BenchScenario scenario;
  private final Optional<Path> terminal;
  private final boolean pulled;
  private final String scheme;
  private final SupplyDescriptor descriptor;
  private final int channel;
  private final PulseSequence sequence;
  private final Envelope envelope;
  private final StopLatch latch = new StopLatch();
  private final PermitSlot permits = new PermitSlot();

  FaultRun(String scenarioName, String fault, double maxAgeSeconds, Optional<Path> terminal) {
    this(
        faulty(BenchScenarios.named(scenarioName).orElseThrow(), fault),
        Descriptors.simulated(),
        1,
        SEQUENCE,
        maxAgeSeconds,
        terminal,
        fault.startsWith("pull"),
        "serial:");
  }

  private FaultRun(
      BenchScenario scenario,
      SupplyDescriptor descriptor,
      int channel,
      PulseSequence sequence,
      double maxAgeSeconds,
      Optional<Path> terminal,
      boolean pulled,
      String scheme) {
    this.scenario = scenario;
    this.descriptor = descriptor;
    this.channel = channel;
    this.sequence = sequence;
    this.envelope = ENVELOPE.withMaxReadingAgeSeconds(maxAgeSeconds, "test bench");
    this.terminal = terminal;
    this.pulled = pulled;
    this.scheme = scheme;
  }

  /**
   * Nothing goes wrong, but the supply is another one.
   *
   * @param scheme of the address where it is on a device: {@code serial:} or {@code usbtmc:}
   */
  static FaultRun of(
      SupplySettings supply,
      SupplyDescriptor descriptor,
      int channel,
      Optional<Path> terminal,
      String scheme) {
    return new FaultRun(
        BenchScenarios.hx12().withSupply(supply),
        descriptor,
        channel,
        SLOW_SEQUENCE,
        3,
        terminal,
        false,
        scheme);
  }

  private static BenchScenario faulty(BenchScenario healthy, String fault) {
    return fault.isEmpty() || fault.startsWith("pull")
        ? healthy
        : healthy.withFaults(
            java.util.Arrays.stream(fault.split(" ")).map(FaultSpec::parse).toList());
  }

  Outcome run() throws IOException {
    try (WireBench bench = new WireBench(scenario, terminal, scheme)) {
      ScpiSupply supply = bench.connect(descriptor, channel);
      OutputPlan plan = OutputPlan.of(1, 0.5, descriptor);
      SupplyKeeper keeper =
          new SupplyKeeper(
              supply, plan, envelope, permits, latch, SupplyListener.NONE, WireBench.CLOCK);
      StepRunner runner = keeper.runner(this::failed);
      latch.onSet(runner::wake);
      runner.start();
      for (int i = 0; i < 3000 && !keeper.isReady() && !latch.isSet(); i++) {
        Pause.nanos(10_000_000);
      }
      long start = WireBench.CLOCK.nanos();
      Conductor conductor =
          new Conductor(Timeline.of(sequence), start, permits, latch, runner::wake);
      StepRunner conducting = runner("conductor", conductor).start();
      if (pulled) {
        Pause.nanos(800_000_000);
        bench.pullTerminal();
      }
      while (!latch.isSet()) {
        Pause.nanos(5_000_000);
      }
      runner.awaitEnd(PATIENCE_NANOS);
      OutputState state = keeper.outputState();
      RunEnding ending = new RunEnding(latch.stop().orElseThrow(), state, keeper.doubt());
      conducting.close();
      runner.close();
      supply.close();
      return new Outcome(ending, offMillis(bench), bench.outputIsOn(), bench.timesOn());
    }
  }

  private double offMillis(WireBench bench) {
    long latched = latch.stop().orElseThrow().nanos();
    return bench.offNanos.stream()
        .mapToLong(nanos -> nanos - latched)
        .filter(late -> late >= 0)
        .mapToDouble(late -> late / 1e6)
        .findFirst()
        .orElse(Double.NaN);
  }

  private StepRunner runner(String name, railglow.time.Step step) {
    return new StepRunner(name, step, WireBench.CLOCK, this::failed);
  }

  private void failed(String who, Throwable e) {
    latch.set(StopCause.INTERNAL_FAULT, WireBench.CLOCK.nanos(), who + ": " + e);
  }
}
