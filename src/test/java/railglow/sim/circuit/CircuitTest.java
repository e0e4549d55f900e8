package railglow.sim.circuit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

class CircuitTest {
  private static CircuitSettings settings(double leadOhms, LoadBranch... branches) {
    return new CircuitSettings(
        leadOhms, 1e-6, "clip", 100e-6, 1e9, 100e-6, 1000, false, List.of(branches));
  }

  private static Circuit settled(CircuitSettings settings, double volts, double limitAmperes) {
    Circuit circuit = new Circuit(settings);
    run(circuit, 1, new Drive(true, volts, limitAmperes, 0, 0));
    return circuit;
  }

  private static void run(Circuit circuit, double seconds, Drive drive) {
    double done = 0;
    while (seconds - done > 1e-12) {
      done += circuit.step(seconds - done, drive);
    }
  }

  @Test
  void theCrossoverLiesAtSetVoltsOverSetAmperes() {
    // 30 V, 5 A: 8 ohm stays in CV at 3.75 A, 5 ohm goes into CC at 25 V (National Instruments
    // RMX-4125 manual, page 39).
    Circuit light = settled(settings(1e-6, LoadBranch.of("R", 8)), 30, 5);
    assertEquals(Circuit.Mode.CONSTANT_VOLTAGE, light.mode());
    assertEquals(3.75, light.outputAmperes(), 1e-4);
    Circuit heavy = settled(settings(1e-6, LoadBranch.of("R", 5)), 30, 5);
    assertEquals(Circuit.Mode.CONSTANT_CURRENT, heavy.mode());
    assertEquals(25, heavy.terminalVolts(), 1e-3);
    // 5 V limit, 2 A, 1 ohm: CC at 2 A and 2 V (BK Precision 9122 manual, page 19).
    Circuit ohm = settled(settings(1e-6, LoadBranch.of("R", 1)), 5, 2);
    assertEquals(2, ohm.outputAmperes(), 1e-4);
    assertEquals(2, ohm.railVolts(), 1e-3);
  }

  @Test
  void aDeadShortTakesLittlePowerOnceTheSupplyLimits() {
    Circuit circuit = settled(settings(1e-6, LoadBranch.fault("C1", 0.05)), 1, 2);
    // I^2 R: 2 A through 0.05 ohm is 0.2 W at 0.1 V (Ohm's and Joule's laws).
    assertEquals(0.2, circuit.wattsAt("C1"), 1e-4);
    assertEquals(0.1, circuit.railVolts(), 1e-5);
  }

  @Test
  void twoWireReadingsIncludeTheLeads() {
    // 0.1 ohm through 0.1 ohm of leads reads 0.2 ohm with two wires, 0.1 ohm with four.
    CircuitSettings two = settings(0.1, LoadBranch.of("R", 0.1));
    Circuit twoWire = settled(two, 5, 1);
    assertEquals(0.2, twoWire.senseVolts() / twoWire.outputAmperes(), 1e-4);
    Circuit fourWire = settled(two.withRemoteSense(true), 5, 1);
    assertEquals(0.1, fourWire.senseVolts() / fourWire.outputAmperes(), 1e-4);
  }

  @Test
  void aStubOfCopperIsPartOfWhatIsSensedAtItsPadAndTheContactIsNot() {
    CircuitSettings two =
        settings(0.1, LoadBranch.of("R", 2)).withStubOhms(Map.of("near", 0.0, "far", 0.05));
    for (boolean wired : new boolean[] {false, true}) {
      Circuit circuit = new Circuit(two.withRemoteSense(wired));
      circuit.setContact("far", 0.3);
      run(circuit, 1, new Drive(true, 1, 2, 0, 0));
      double expected = wired ? 2.05 : 2.45;
      assertEquals(expected, circuit.senseVolts() / circuit.outputAmperes(), 1e-3);
      circuit.setContact("near", 0.3);
      run(circuit, 1, new Drive(true, 1, 2, 0, 0));
      assertEquals(expected - 0.05, circuit.senseVolts() / circuit.outputAmperes(), 1e-3);
    }
  }

  @Test
  void senseWiresThatHangInTheAirWithTheProbeShowTheTerminals() {
    Circuit circuit = new Circuit(settings(0.1, LoadBranch.of("R", 2)).withRemoteSense(true));
    circuit.setContact("clip", 1e9);
    run(circuit, 0.5, new Drive(true, 0.05, 0.02, 0, 0));
    assertEquals(0.05, circuit.senseVolts(), 1e-6);
    assertEquals(0.05, circuit.terminalVolts(), 1e-6);
    circuit.setContact("clip", 0.03);
    run(circuit, 0.5, new Drive(true, 0.05, 0.02, 0, 0));
    assertEquals(0.04, circuit.senseVolts(), 1e-6); // 20 mA through 2 ohm: the limit holds
  }

  @Test
  void remoteSenseHoldsTheRailAtTheSetVoltage() {
    CircuitSettings wired = settings(0.1, LoadBranch.of("R", 2)).withRemoteSense(true);
    Circuit circuit = settled(wired, 1, 2);
    assertEquals(1, circuit.railVolts(), 1e-3);
    assertEquals(1.05, circuit.terminalVolts(), 1e-3);
  }

  @Test
  void theRailDischargesThroughItsOwnResistance() {
    Circuit circuit = settled(settings(1e-3, LoadBranch.of("R", 50)), 2, 1);
    double start = circuit.railVolts();
    circuit.disturb();
    run(circuit, 0.010, new Drive(false, 0, 0, 0, 0));
    // exp(-t/RC) with R = 50 ohm and both capacitors of 100 uF together: tau = 10 ms.
    assertEquals(start * Math.exp(-1), circuit.railVolts(), 0.01 * start);
  }

  @Test
  void theOutputRisesNoFasterThanItsSlewRate() {
    Circuit circuit = new Circuit(settings(1e-3, LoadBranch.of("R", 1000)));
    run(circuit, 1e-3, new Drive(true, 5, 5, 0, 0));
    assertEquals(1.0, circuit.terminalVolts(), 0.01, "1000 V/s for 1 ms");
  }

  @Test
  void chargingACapacitorRunsIntoTheCurrentLimit() {
    Circuit circuit =
        new Circuit(settings(1e-3, LoadBranch.of("R", 1e6)).withRailFarads(10_000e-6));
    run(circuit, 5e-3, new Drive(true, 1, 0.5, 0, 0));
    assertEquals(Circuit.Mode.CONSTANT_CURRENT, circuit.mode());
    // I t / C with both capacitors: 0.5 A * 5 ms / 10.1 mF.
    assertEquals(0.5 * 5e-3 / 10_100e-6, circuit.railVolts(), 0.003);
  }

  @Test
  void aJunctionFollowsShockley() {
    Junction junction = new Junction("D1", 1e-12, 0.02585);
    LoadBranch branch =
        new LoadBranch(false, List.of(new HeatShare("D1", 1e-6)), Optional.of(junction), 0);
    // i = Is (exp(v/Vt) - 1), Shockley 1949.
    assertEquals(1e-12 * Math.expm1(0.6 / 0.02585), branch.amperesAt(0.6, 1), 1e-4 * 0.012);
    assertEquals(0, branch.amperesAt(-1, 1));
    Circuit circuit = settled(settings(0.01, branch), 0.6, 1);
    assertEquals(branch.amperesAt(circuit.railVolts(), 1), circuit.outputAmperes(), 1e-5);
  }

  @Property(tries = 60, seed = "1")
  void allEnergyOfTheSupplyIsFoundAsHeat(
      @ForAll @DoubleRange(min = 0.1, max = 3) double volts,
      @ForAll @DoubleRange(min = 0.02, max = 50) double ohms,
      @ForAll @DoubleRange(min = 0.05, max = 3) double limit) {
    Circuit circuit =
        settled(settings(0.07, LoadBranch.fault("C", ohms), LoadBranch.of("U", 45)), volts, limit);
    circuit.takeJoules();
    run(circuit, 1, new Drive(true, volts, limit, 0, 0));
    Map<String, Double> heat = circuit.takeJoules();
    double rail = circuit.railVolts() * circuit.outputAmperes();
    assertEquals(rail, heat.get("C") + heat.get("U"), 1e-6 + 1e-4 * rail);
    assertTrue(circuit.outputAmperes() <= limit * 1.0001);
    assertTrue(circuit.terminalVolts() <= volts * 1.0001);
    assertEquals(0, circuit.takeJoules().get("C"), "taken heat is not given twice");
  }
}
