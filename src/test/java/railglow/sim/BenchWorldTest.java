package railglow.sim;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.lang.management.ManagementFactory;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import railglow.sim.picture.CameraSettings;
import railglow.sim.picture.Reflection;
import railglow.sim.truth.TruthEvent;

class BenchWorldTest {
  /** Pulses a bench and returns ON minus OFF of each pixel, in kelvin, after one lost cycle. */
  private static double[] pulse(PulsedBench bench, int cycles) {
    return bench.inPhaseKelvin(cycles);
  }

  private static BenchScenario quiet(BenchScenario scenario) {
    return scenario.withCamera(CameraSettings.ideal(256, 192, 25)).withReflection(Reflection.NONE);
  }

  @Test
  void sameSeedSameCommandsSameBytes() {
    List<short[]> first = frames(BenchScenarios.hx12());
    List<short[]> second = frames(BenchScenarios.hx12());
    for (int i = 0; i < first.size(); i++) {
      assertArrayEquals(first.get(i), second.get(i));
    }
    assertFalse(Arrays.equals(first.get(3), frames(BenchScenarios.hx12().withSeed(2)).get(3)));
  }

  private static List<short[]> frames(BenchScenario scenario) {
    PulsedBench bench = new PulsedBench(scenario, 1, 0.4);
    List<short[]> frames = new ArrayList<>();
    for (int i = 0; i < 15; i++) {
      frames.add(bench.nextFrame().clone());
    }
    frames.add(
        bench
            .readings()
            .toString()
            .chars()
            .mapToObj(c -> (short) c)
            .reduce(new short[1], (a, c) -> new short[] {(short) (a[0] * 31 + c)}, (a, b) -> a));
    return frames;
  }

  @Test
  void theHx12ShowsItsFaultWhereTheTruthSays() {
    PulsedBench bench = new PulsedBench(quiet(BenchScenarios.hx12()), 1, 2);
    double[] inPhase = pulse(bench, 4);
    int warmest = PulsedBench.warmest(inPhase);
    TruthEvent source = bench.world().truth().last(TruthEvent.Kind.SOURCE).orElseThrow();
    assertEquals("C37", source.facts().get("part"));
    // Board (78, 31) mm at 2 pixels a millimetre with the corner at (8, 176).
    assertEquals(164, source.number("column"), 1e-9);
    assertEquals(114, source.number("row"), 1e-9);
    assertEquals(source.number("column"), warmest % 256, 1.01);
    assertEquals(source.number("row"), warmest / 256, 1.01);
    assertTrue(inPhase[warmest] > 0.03 && inPhase[warmest] < 0.3, "rise " + inPhase[warmest]);
  }

  /** The middle of C37 a tenth and a half of a second after the output went on, in counts. */
  private static int[] warming(double framesPerSecond) {
    BenchScenario bench =
        BenchScenarios.hx12().withCamera(CameraSettings.ideal(256, 192, framesPerSecond));
    BenchWorld world =
        new BenchWorld(bench.withReflection(Reflection.NONE), 0, new railglow.sim.truth.TruthLog());
    world.receive("CURR 2;VOLT 5", 0);
    short[] counts = new short[256 * 192];
    int[] seen = new int[3];
    for (long n = 0; world.exposureNanos(n) <= 1_000_000_000L; n++) {
      if (world.exposureNanos(n) >= 500_000_000L) {
        world.receive("OUTP ON", 500_000_000L);
      }
      world.takeFrame(world.exposureNanos(n), counts);
      int at = counts[114 * 256 + 164];
      seen[0] = world.exposureNanos(n) <= 500_000_000L ? at : seen[0];
      seen[1] = world.exposureNanos(n) <= 600_000_000L ? at : seen[1];
      seen[2] = at;
    }
    return new int[] {seen[1] - seen[0], seen[2] - seen[0]};
  }

  @Test
  void whatABoardShowsDoesNotDependOnHowOftenTheCameraLooks() {
    int[] often = warming(100);
    int[] seldom = warming(10);
    assertTrue(often[0] > 80 && often[1] > 600, Arrays.toString(often));
    assertEquals(often[0], seldom[0], 0.02 * often[0] + 1);
    assertEquals(often[1], seldom[1], 0.01 * often[1] + 1);
  }

  @Test
  void theRailReadsItsResistance() {
    assertEquals(6.8 + 0.12, reading("hx12", 1, 0.4), 0.05);
    assertEquals(45 + 0.12, reading("healthy", 1, 0.4), 0.5);
    assertEquals(0.020 + 0.12, reading("dead-short", 1, 0.4), 0.003);
  }

  private static double reading(String name, double volts, double amperes) {
    BenchWorld world =
        new BenchWorld(
            BenchScenarios.named(name).orElseThrow(), 0, new railglow.sim.truth.TruthLog());
    world.receive("VOLT " + volts + ";CURR " + amperes + ";OUTP ON", 0);
    String[] reply = world.receive("MEAS:VOLT?;:MEAS:CURR?", 100_000_000).split(";");
    return Double.parseDouble(reply[0]) / Double.parseDouble(reply[1]);
  }

  @Test
  void aHealthyBoardHasNoLocalHeat() {
    double[] inPhase =
        pulse(new PulsedBench(quiet(BenchScenarios.named("healthy").get()), 1, 2), 4);
    double most = inPhase[PulsedBench.warmest(inPhase)];
    double least = java.util.Arrays.stream(inPhase).min().orElseThrow();
    // A single count is 10 mK; averaged over a hundred frames nothing stands out by more than that.
    assertTrue(most < 0.011 && least > -0.011, least + " K to " + most + " K");
  }

  @Test
  void theTruthFollowsThePulses() {
    PulsedBench bench = new PulsedBench(quiet(BenchScenarios.hx12()), 1, 2);
    pulse(bench, 2);
    List<TruthEvent> outputs = bench.world().truth().events(TruthEvent.Kind.OUTPUT);
    assertEquals(6, outputs.size(), "three cycles with two edges each");
    TruthEvent hot =
        bench.world().truth().events(TruthEvent.Kind.FRAME).stream()
            .max((a, b) -> Double.compare(a.number("C37Watts"), b.number("C37Watts")))
            .orElseThrow();
    // V^2 / R at C37: (1 V less the drop in 120 milliohm)^2 / 8.01 ohm.
    double rail = 6.8 / 6.92;
    assertEquals(rail * rail / (1 / (1 / 6.8 - 1 / 45.0)), hot.number("C37Watts"), 1e-4);
    assertEquals(1 / 6.92, hot.number("amperes"), 1e-3);
  }

  @Test
  void theWatchedCurrentIsSeenAtTheMicrosecond() {
    BenchScenario runaway =
        BenchScenarios.hx12()
            .withFaults(List.of(railglow.sim.fault.FaultSpec.parse("runaway=0.5ohm@on+1s")));
    BenchWorld world = new BenchWorld(runaway, 0, new railglow.sim.truth.TruthLog());
    world.watchAmperes(0.5);
    world.receive("VOLT 1;CURR 2;OUTP ON", 1_000_000_000L);
    world.advance(3_000_000_000L);
    TruthEvent above = world.truth().last(TruthEvent.Kind.CURRENT_ABOVE).orElseThrow();
    assertEquals(2_000_000_000L, above.nanos(), 2_000_000, "one second after the output went on");
    assertEquals(1, world.truth().events(TruthEvent.Kind.CURRENT_ABOVE).size());
  }

  @Tag("slow")
  @Test
  void inMemoryItIsAtLeastTwentyTimesFasterThanRealTime() {
    // The thread's own processor time, so that other work on the machine does not count.
    double ratio =
        BenchSpeed.timesRealTime(
            BenchScenarios.hx12(),
            20,
            ManagementFactory.getThreadMXBean()::getCurrentThreadCpuTime);
    assertTrue(ratio >= 20, "only " + ratio + " times real time");
  }
}
