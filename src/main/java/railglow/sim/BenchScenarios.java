package railglow.sim;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import railglow.sim.circuit.CircuitSettings;
import railglow.sim.circuit.Junction;
import railglow.sim.circuit.LoadBranch;
import railglow.sim.hand.HandScript;
import railglow.sim.picture.CameraSettings;
import railglow.sim.picture.Reflection;
import railglow.sim.wire.SupplySettings;

/** The named benches. All invented. */
public final class BenchScenarios {
  /** Both leads: 2 m of 0.75 mm^2 copper each way with their plugs. */
  private static final double LEAD_OHMS = 0.118;

  /** Soldered or well clipped. */
  private static final double CONTACT_OHMS = 0.002;

  /** The leads sit on the rail's bulk capacitor. */
  private static final String INJECTION_PLACE = "C9";

  /** The rail's capacitors together. */
  private static final double RAIL_FARADS = 0.220e-3;

  /** A short between the layers of a capacitor heats much of its body. */
  private static final double SHORTED_BODY_SHARE = 0.5;

  /** The place of heat that arises in many small parts everywhere. */
  static final String ALL_OVER_THE_BOARD = "board";

  private static final double NORMAL_OHMS = 45;
  private static final double ROOM_CELSIUS = 23;

  /** Too large to matter; a runaway fault begins from here where nothing is at fault. */
  private static final double NO_FAULT_OHMS = 1e6;

  /** Somebody sits beside the bench and moves a little. */
  private static final Reflection OPERATOR = new Reflection(1.5, 14, 205, 55, 20, 11);

  /** Beside 45 ohm it makes 6.8 ohm. */
  private static final double LEAK_OHMS = 1 / (1 / 6.8 - 1 / 45.0);

  private static final Map<String, BenchScenario> ALL = all();

  private BenchScenarios() {}

  public static List<String> names() {
    return ALL.keySet().stream().sorted().toList();
  }

  public static Optional<BenchScenario> named(String name) {
    return Optional.ofNullable(ALL.get(name));
  }

  /** The HX-12 with a leaky capacitor C37: its 3V3 rail reads 6.8 ohm. */
  public static BenchScenario hx12() {
    return ALL.get("hx12");
  }

  private static Map<String, BenchScenario> all() {
    Map<String, BenchScenario> all = new TreeMap<>();
    add(
        all,
        "hx12",
        "irrigation controller HX-12, C37 leaks: 3V3 reads 6.8 ohm where 45 ohm is normal",
        Hx12Board.layout(),
        with(normal3v3(), LoadBranch.fault("C37", LEAK_OHMS)));
    add(
        all,
        "dead-short",
        "irrigation controller HX-12, C37 is a dead short of 20 milliohm",
        bodyShare(Hx12Board.layout(), "C37", SHORTED_BODY_SHARE),
        with(normal3v3(), LoadBranch.fault("C37", 0.020)));
    add(
        all,
        "healthy",
        "irrigation controller HX-12 without a fault: 3V3 reads 45 ohm",
        Hx12Board.layout(),
        with(normal3v3(), LoadBranch.fault("C37", NO_FAULT_OHMS)));
    add(
        all,
        "hx12-mirrored",
        "as hx12, with the operator's warm reflection wandering over the fault",
        Hx12Board.layout(),
        with(normal3v3(), LoadBranch.fault("C37", LEAK_OHMS)));
    all.computeIfPresent(
        "hx12-mirrored",
        (name, bench) -> bench.withReflection(new Reflection(4, 14, 128, 90, 60, 11)));
    add(
        all,
        "two-leaks",
        "irrigation controller HX-12, C37 and C40 leak 16 ohm each",
        Hx12Board.layout(),
        with(normal3v3(), LoadBranch.fault("C37", 16), LoadBranch.fault("C40", 16)));
    add(
        all,
        "close-leaks",
        "irrigation controller HX-12, C36 and C37, 2.8 mm apart, leak 16 ohm each",
        Hx12Board.layout(),
        with(normal3v3(), LoadBranch.fault("C37", 16), LoadBranch.fault("C36", 16)));
    add(
        all,
        "warm-path",
        "irrigation controller HX-12, C39 leaks 2 ohm behind FB1, whose 4 ohm get warmer than it",
        Hx12Board.layout(),
        with(normal3v3(), LoadBranch.faultBehind("C39", 2, "FB1", 4)));
    add(
        all,
        "long-trace",
        "irrigation controller HX-12, C40 is a short of 20 milliohm behind a worn trace of 0.9 ohm, 20"
            + " mm long",
        Hx12Board.withLongTrace(),
        with(normal3v3(), LoadBranch.faultBehind("C40", 0.02, Hx12Board.LONG_TRACE, 0.9)));
    add(
        all,
        "short-in-chip",
        "irrigation controller HX-12, a short of 0.4 ohm in one corner of the large chip U6",
        Hx12Board.withShortInChip(),
        with(normal3v3(), LoadBranch.fault(Hx12Board.CHIP_CORNER, 0.4)));
    add(
        all,
        "leaky-junction",
        "irrigation controller HX-12, U8 conducts like a diode from 3V3 to ground",
        Hx12Board.layout(),
        with(normal3v3(), LoadBranch.leakyJunction(new Junction("U8", 1e-9, 0.034), 1.5)));
    add(
        all,
        "drifting",
        "as hx12, but C37 leaks more the warmer it gets",
        Hx12Board.layout(),
        with(normal3v3(), LoadBranch.fault("C37", LEAK_OHMS).withDriftPerKelvin(-0.25)));
    addResistor(all);
    return Map.copyOf(all);
  }

  /** No board at all: what a time alignment needs. */
  private static void addResistor(Map<String, BenchScenario> all) {
    add(
        all,
        "resistor",
        "a small resistor of 10 ohm by itself before the camera, for `bench --align`",
        Hx12Board.bareResistor(),
        List.of(LoadBranch.of(Hx12Board.RESISTOR, 10)));
    all.computeIfPresent(
        "resistor",
        (name, bench) ->
            bench
                .withCircuit(bench.circuit().withRailFarads(1e-6))
                .withReflection(Reflection.NONE));
  }

  private static void add(
      Map<String, BenchScenario> all,
      String name,
      String description,
      BoardLayout board,
      List<LoadBranch> branches) {
    CircuitSettings circuit =
        new CircuitSettings(
            LEAD_OHMS,
            CONTACT_OHMS,
            INJECTION_PLACE,
            100e-6,
            1000,
            RAIL_FARADS,
            300,
            false,
            branches,
            Hx12Board.stubOhms());
    all.put(
        name,
        new BenchScenario(
            name,
            description,
            1,
            ROOM_CELSIUS,
            board,
            circuit,
            SupplySettings.usual(),
            CameraSettings.decent(),
            OPERATOR,
            HandScript.CLIPPED,
            List.of()));
  }

  private static BoardLayout bodyShare(BoardLayout board, String name, double share) {
    return board.withParts(
        board.parts().stream()
            .map(part -> part.name().equals(name) ? part.withBodyShare(share) : part)
            .toList());
  }

  /** The consumers of 3V3 of a good board, 45 ohm together; none of them gets warm by itself. */
  private static List<LoadBranch> normal3v3() {
    return List.of(LoadBranch.of(ALL_OVER_THE_BOARD, NORMAL_OHMS));
  }

  private static List<LoadBranch> with(List<LoadBranch> normal, LoadBranch... faults) {
    List<LoadBranch> all = new ArrayList<>(normal);
    all.addAll(List.of(faults));
    return all;
  }
}
