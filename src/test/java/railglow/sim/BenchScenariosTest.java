package railglow.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import railglow.sim.hand.HandMove;
import railglow.sim.hand.HandScript;
import railglow.sim.picture.CameraSettings;
import railglow.sim.picture.Reflection;
import railglow.sim.truth.TruthEvent;
import railglow.sim.truth.TruthLog;

class BenchScenariosTest {
  private static final long SECOND = 1_000_000_000L;

  private static BenchScenario quiet(String name) {
    return BenchScenarios.named(name)
        .orElseThrow()
        .withCamera(CameraSettings.ideal(256, 192, 25))
        .withReflection(Reflection.NONE);
  }

  private static double[] measure(BenchWorld world, long now) {
    String[] reply = world.receive("MEAS:VOLT?;:MEAS:CURR?", now).split(";");
    return new double[] {Double.parseDouble(reply[0]), Double.parseDouble(reply[1])};
  }

  private static double at(double[] picture, BenchScenario bench, String part) {
    int column = (int) Math.round(bench.board().column(bench.board().part(part).orElseThrow()));
    int row = (int) Math.round(bench.board().row(bench.board().part(part).orElseThrow()));
    return picture[row * 256 + column];
  }

  @ParameterizedTest
  @CsvSource({
    "hx12, C37",
    "dead-short, C37",
    "hx12-mirrored, C37",
    "drifting, C37",
    "warm-path, C39",
    "short-in-chip, U6.corner",
    "long-trace, C40",
    "leaky-junction, U8"
  })
  void theTruthNamesThePartAtFault(String name, String part) {
    assertEquals(List.of(part), BenchScenarios.named(name).orElseThrow().faultyParts());
  }

  @Test
  void aHealthyBoardHasNoPartAtFault() {
    assertEquals(List.of(), BenchScenarios.named("healthy").orElseThrow().faultyParts());
  }

  @Test
  void twoLeaksBothGetWarm() {
    BenchScenario bench = quiet("two-leaks");
    assertEquals(List.of("C37", "C40"), bench.faultyParts());
    double[] inPhase = new PulsedBench(bench, 1.5, 4).inPhaseKelvin(3);
    assertTrue(at(inPhase, bench, "C37") > 0.05, "C37 " + at(inPhase, bench, "C37"));
    assertTrue(at(inPhase, bench, "C40") > 0.05, "C40 " + at(inPhase, bench, "C40"));
  }

  @Test
  void theWarmPathIsWarmerThanItsFault() {
    BenchScenario bench = quiet("warm-path");
    double[] inPhase = new PulsedBench(bench, 1.5, 4).inPhaseKelvin(3);
    assertTrue(at(inPhase, bench, "FB1") > 1.2 * at(inPhase, bench, "C39"));
    assertTrue(at(inPhase, bench, "C39") > 0.02);
  }

  @Test
  void aShortInAChipWarmsTheWholePackage() {
    BenchWorld world = new BenchWorld(quiet("short-in-chip"), 0, new TruthLog());
    short[] counts = new short[256 * 192];
    world.receive("CURR 1;VOLT 1;OUTP ON", 0);
    for (int i = 0; i < 500; i++) {
      world.takeFrame(world.exposureNanos(i), counts);
    }
    // 1 A through 0.4 ohm: 0.4 W for 20 s; with the chip shorted it is far above its neighbours.
    double chip = rise(world, "U6");
    assertTrue(chip > 0.5 && chip < 10, "U6 rises by " + chip);
    assertTrue(chip > 3 * rise(world, "U2"), "U2 rises by " + rise(world, "U2"));
    assertTrue(rise(world, "U6.corner") > chip);
  }

  private static double rise(BenchWorld world, String part) {
    for (int i = 0; i < world.heat().parts().size(); i++) {
      if (world.heat().parts().get(i).name().equals(part)) {
        return world.heat().partRise(i);
      }
    }
    throw new AssertionError(part);
  }

  @Test
  void aJunctionDrawsNothingAtALowLevelAndMuchAtAHighOne() {
    BenchWorld world = new BenchWorld(quiet("leaky-junction"), 0, new TruthLog());
    world.receive("CURR 2;VOLT 0.2;OUTP ON", 0);
    assertEquals(0.2 / 45, measure(world, SECOND)[1], 0.001);
    world.receive("VOLT 1", SECOND);
    assertTrue(measure(world, 2 * SECOND)[1] > 0.15);
  }

  @Test
  void aDriftingFaultDrawsMoreAsItWarms() {
    BenchWorld world = new BenchWorld(quiet("drifting"), 0, new TruthLog());
    short[] counts = new short[256 * 192];
    world.receive("CURR 2;VOLT 2;OUTP ON", 0);
    double cold = measure(world, 50_000_000)[1];
    for (int i = 0; i < 200; i++) {
      world.takeFrame(world.exposureNanos(i), counts);
    }
    assertTrue(measure(world, 8 * SECOND)[1] > 1.03 * cold);
  }

  @Test
  void theHandMakesAndBreaksTheCircuit() {
    HandScript hand =
        new HandScript(
            List.of(HandMove.parse("touch:C9=50mohm@1s..2s"), HandMove.parse("touch:C40@3s..4s")));
    BenchWorld world = new BenchWorld(quiet("hx12").withHand(hand), 0, new TruthLog());
    world.receive("CURR 1;VOLT 1;OUTP ON", 0);
    assertEquals(0, measure(world, SECOND / 2)[1], 0.001);
    assertEquals(1 / (6.8 + 0.118 + 0.050), measure(world, 3 * SECOND / 2)[1], 0.001);
    assertEquals(0, measure(world, 5 * SECOND / 2)[1], 0.001);
    world.advance(5 * SECOND);
    List<TruthEvent> moves = world.truth().events(TruthEvent.Kind.HAND);
    assertEquals(
        List.of("touch", "lift", "touch", "lift"),
        moves.stream().map(event -> event.facts().get("does")).toList());
    assertEquals(SECOND, moves.get(0).nanos(), 2_000_000);
  }
}
