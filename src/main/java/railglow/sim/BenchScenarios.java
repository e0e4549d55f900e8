package railglow.sim;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import railglow.sim.circuit.CircuitSettings;
import railglow.sim.circuit.HeatShare;
import railglow.sim.circuit.LoadBranch;
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

  private static final double ROOM_CELSIUS = 23;

  /** Too large to matter; a runaway fault begins from here where nothing is at fault. */
  private static final double NO_FAULT_OHMS = 1e6;

  /** Somebody sits beside the bench and moves a little. */
  private static final Reflection OPERATOR = new Reflection(1.5, 14, 205, 55, 20, 11);

  private static final Map<String, BenchScenario> ALL = all();

  private BenchScenarios() {}

  public static List<String> names() {
    return List.copyOf(ALL.keySet());
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
        with(normal3v3(), LoadBranch.fault("C37", 1 / (1 / 6.8 - 1 / 45.0))));
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
    return Map.copyOf(all);
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
            branches);
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
            List.of()));
  }

  private static BoardLayout bodyShare(BoardLayout board, String name, double share) {
    return board.withParts(
        board.parts().stream()
            .map(part -> part.name().equals(name) ? part.withBodyShare(share) : part)
            .toList());
  }

  /** The consumers of 3V3 of a good board, 45 ohm together. */
  private static List<LoadBranch> normal3v3() {
    List<LoadBranch> branches = new ArrayList<>();
    Map<String, Double> shares = new TreeMap<>();
    shares.put("U6", 0.50);
    shares.put("U10", 0.15);
    shares.put("A1", 0.15);
    shares.put("U8", 0.10);
    shares.put("U9", 0.05);
    shares.put("U5", 0.05);
    shares.forEach((part, share) -> branches.add(LoadBranch.of(part, 45.0 / share)));
    return branches;
  }

  private static List<LoadBranch> with(List<LoadBranch> normal, LoadBranch fault) {
    List<LoadBranch> all = new ArrayList<>(normal);
    all.add(fault);
    return all;
  }

  /** A path that is itself a resistance before the fault. */
  static LoadBranch through(String pathPart, double pathOhms, String faultPart, double faultOhms) {
    return new LoadBranch(
        true,
        List.of(new HeatShare(faultPart, faultOhms), new HeatShare(pathPart, pathOhms)),
        Optional.empty());
  }
}
