package railglow.run.handsfree;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import railglow.observed.Regulation;
import railglow.observed.SupplyReading;
import railglow.sim.BenchScenarios;
import railglow.sim.BenchWorld;
import railglow.sim.hand.HandMove;
import railglow.sim.hand.HandScript;
import railglow.sim.truth.TruthLog;

/** A scripted hand on the simulated bench in invented time, felt by what hunts with it. */
class HandOnTheSimulatedBenchTest {
  private static final long MS = 1_000_000L;
  private static final double LEADS = 0.118;
  private static final ContactBounds TWO_WIRES = ContactBounds.usual(0.005, 0.002, LEADS);
  private static final ContactBounds FOUR_WIRES = ContactBounds.usual(0.005, 0.002, 0);
  private BenchWorld world;
  private long nanos;

  @Test
  void touchBounceSlipLiftAndTheNextPointAreFeltInTheirOrder() {
    start("touch:C9@1s..3s", "bounce:C9@3s..5s", "touch:C40=500mohm@7s..9s");
    level(0.05, 0.02);
    List<ContactState> states = new ArrayList<>();
    ContactSense sense = new ContactSense(TWO_WIRES);
    Contact atC9 = null;
    Contact last = null;
    while (nanos < 10_000 * MS) {
      last = next(sense);
      if (states.isEmpty() || states.get(states.size() - 1) != last.state()) {
        states.add(last.state());
      }
      atC9 = last.state() == ContactState.STEADY && nanos < 3_000 * MS ? last : atC9;
    }
    assertEquals(ContactState.IN_AIR, states.get(0));
    assertEquals(ContactState.STEADY, states.get(2));
    assertEquals(ContactState.BOUNCING, states.get(3));
    assertTrue(states.contains(ContactState.LIFTED), states.toString());
    assertEquals(6.83, atC9.ohms(), 0.25); // 6.8 ohm and 30 milliohm of contact
    assertEquals(ContactState.IN_AIR, last.state());
  }

  @Test
  void onlyTheHalvesInWhichTheProbeSlipsAreNoted() {
    start("touch:C9@0s..4.3s", "slip:C9=300mohm@4.3s..5.5s", "touch:C9@5.5s..20s");
    level(1, 0.5);
    ContactSwing swing = new ContactSwing(TWO_WIRES);
    Set<Long> swungHalves = new TreeSet<>();
    while (nanos < 12_000 * MS) {
      long half = nanos / (1000 * MS);
      send(half % 2 == 0 ? "OUTP ON" : "OUTP OFF");
      while (nanos / (1000 * MS) == half) {
        swing.take(reading(half % 2 == 0)).ifPresent(swung -> swungHalves.add(half));
      }
    }
    assertEquals(Set.of(4L), swungHalves, "ON from 4 s to 5 s; the slip ends while OFF");
  }

  @Test
  void withFourWiresTheContactIsToldApartFromTheRailAndItsCopper() {
    start("touch:C41=1.2ohm@0s..60s");
    send("VOLT:SENS INT");
    level(0.05, 0.02);
    Contact terminals = steady(new ContactSense(TWO_WIRES));
    send("OUTP OFF");
    send("VOLT:SENS EXT");
    level(0.05, 0.02);
    Contact board = steady(new ContactSense(FOUR_WIRES));
    ContactShare share = ContactShare.of(terminals, board);
    assertEquals(1.2, share.contactOhms(), Math.max(0.15, share.withinOhms()));
    // 6.8 ohm and 31.1 mm of narrow copper at 2.46 milliohm a millimetre.
    assertEquals(6.8 + 0.077, share.railOhms(), 0.2);
  }

  @Test
  void atTheWorkingLevelPointsDifferByTheirCopper() {
    double near = ohmsAt("C37");
    double far = ohmsAt("C41");
    assertEquals(0.077, far - near, 0.02);
  }

  @Test
  void sensingAtTheTerminalsNeverGivesAnOpenProbeMoreThanItsLevel() {
    start("touch:C9@5s..6s");
    send("VOLT:SENS INT");
    level(0.05, 0.02);
    while (nanos < 5_500 * MS) {
      SupplyReading reading = reading(true);
      assertTrue(reading.volts() < 0.055 && reading.amperes() < 0.0215, reading.toString());
      assertTrue(world.supply().output(1).circuit().railVolts() <= 0.0501);
    }
  }

  private double ohmsAt(String point) {
    start("touch:" + point + "@0s..60s");
    level(1, 0.5);
    double sum = 0;
    for (int i = 0; i < 60; i++) {
      SupplyReading reading = reading(true);
      sum += i < 20 ? 0 : reading.volts() / reading.amperes();
    }
    return sum / 40;
  }

  private Contact steady(ContactSense sense) {
    Contact contact = next(sense);
    for (int i = 0; i < 100 && contact.state() != ContactState.STEADY; i++) {
      contact = next(sense);
    }
    assertEquals(ContactState.STEADY, contact.state());
    for (int i = 0; i < 20; i++) {
      contact = next(sense);
    }
    return contact;
  }

  private Contact next(ContactSense sense) {
    SupplyReading reading = reading(true);
    return sense.take(reading.endNanos(), reading.volts(), reading.amperes());
  }

  private void start(String... moves) {
    List<HandMove> script = new ArrayList<>();
    for (String move : moves) {
      script.add(HandMove.parse(move));
    }
    nanos = 0;
    world =
        new BenchWorld(BenchScenarios.hx12().withHand(new HandScript(script)), 0, new TruthLog());
  }

  private void level(double volts, double amperes) {
    send("VOLT " + volts);
    send("CURR " + amperes);
    send("OUTP ON");
  }

  private String send(String line) {
    nanos += 2 * MS;
    return world.receive(line, nanos);
  }

  private SupplyReading reading(boolean on) {
    nanos += 46 * MS;
    long begin = nanos;
    double volts = Double.parseDouble(send("MEAS:VOLT?"));
    double amperes = Double.parseDouble(send("MEAS:CURR?"));
    return new SupplyReading(begin, nanos, volts, amperes, on, Regulation.NONE, Set.of());
  }
}
