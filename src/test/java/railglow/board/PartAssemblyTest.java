package railglow.board;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import railglow.board.geometry.PackageOutline;
import railglow.board.imports.Netlist;
import railglow.board.imports.Pad;
import railglow.board.imports.PlacedPart;
import railglow.board.imports.Placement;

class PartAssemblyTest {
  private static PlacedPart placed(String reference, String packageName, double x, double y) {
    return new PlacedPart(reference, "v", packageName, x, y, 0, Side.TOP, 2);
  }

  private static Pad pad(String reference, String net, double x, double y) {
    return new Pad(net, reference, "1", x, y, 0.5, 0.5, 0, Pad.Access.TOP, false, 4);
  }

  private static Optional<Placement> placement(PlacedPart... parts) {
    return Optional.of(new Placement(List.of(parts), List.of()));
  }

  private static Optional<Netlist> netlist(Pad... pads) {
    return Optional.of(new Netlist(List.of(pads), List.of()));
  }

  @Test
  void aNetlistWithAnotherOriginIsMovedOntoThePlacement() {
    PartAssembly joined =
        PartAssembly.of(
            placement(placed("C1", "0805", 10, 10), placed("C2", "0805", 20, 10)),
            netlist(
                pad("C1", "A", 109, 60),
                pad("C1", "B", 111, 60),
                pad("C2", "A", 119, 60),
                pad("C2", "B", 121, 60)),
            Map.of());
    assertEquals(9, joined.netlist().orElseThrow().pads().get(0).xMillimetres(), 1e-9);
    assertEquals(10, joined.netlist().orElseThrow().pads().get(0).yMillimetres(), 1e-9);
    assertTrue(joined.notes().toString().contains("another origin"));
    assertEquals(List.of(), joined.gaps());
    assertEquals(Set.of("A", "B"), joined.parts().get(0).nets());
  }

  @Test
  void aPartWhosePadsLieElsewhereIsNamed() {
    List<PlacedPart> parts = new ArrayList<>();
    List<Pad> pads = new ArrayList<>();
    for (int i = 1; i <= 5; i++) {
      parts.add(placed("C" + i, "0805", i * 10, 10));
      pads.add(pad("C" + i, "A", i == 4 ? -40 : i * 10, 10));
    }
    PartAssembly joined =
        PartAssembly.of(
            Optional.of(new Placement(parts, List.of())),
            Optional.of(new Netlist(pads, List.of())),
            Map.of());
    assertTrue(joined.gaps().get(0).contains("disagree about the place of C4"));
  }

  @Test
  void aPartOnlyTheNetlistKnowsIsPlacedByItsPadsAndNamed() {
    PartAssembly joined =
        PartAssembly.of(
            placement(placed("C1", "0805", 10, 10)),
            netlist(pad("C1", "A", 10, 10), pad("U7", "A", 30, 30), pad("U7", "B", 34, 38)),
            Map.of());
    Part u7 = joined.parts().get(1);
    assertEquals("U7", u7.reference());
    assertEquals(32, u7.xMillimetres(), 1e-9);
    assertEquals(4.5, u7.widthMillimetres(), 1e-9);
    assertEquals(8.5, u7.heightMillimetres(), 1e-9);
    assertTrue(joined.gaps().get(0).contains("in the netlist but not in the placement: U7"));
  }

  @Test
  void sizesComeFromTheBoardFileThenTheNameThenThePadsThenAGuessThatIsSaid() {
    PartAssembly joined =
        PartAssembly.of(
            placement(
                placed("J1", "TERM", 10, 10),
                placed("C2", "0805", 20, 10),
                placed("X3", "ODD", 30, 10),
                placed("X4", "ODD", 40, 10)),
            netlist(pad("X3", "A", 28, 10), pad("X3", "B", 32, 10), pad("C2", "A", 20, 10)),
            Map.of("TERM", new PackageOutline(8, 6)));
    assertEquals(8, joined.parts().get(0).widthMillimetres());
    assertEquals(2.0, joined.parts().get(1).widthMillimetres());
    assertEquals(4.5, joined.parts().get(2).widthMillimetres());
    assertEquals(2.0, joined.parts().get(3).widthMillimetres());
    assertTrue(joined.notes().toString().contains("no size is known for X4"));
  }

  @Test
  void aReferenceLongerThanTheColumnIsStillFound() {
    PartAssembly joined =
        PartAssembly.of(
            placement(placed("CONN1234", "0805", 10, 10)),
            netlist(pad("CONN12", "VCC", 10, 10)),
            Map.of());
    assertEquals(Set.of("VCC"), joined.parts().get(0).nets());
    assertEquals(List.of(), joined.gaps());
  }

  @Test
  void referencesThatFallTogetherInTheNetlistAreNamed() {
    PartAssembly joined =
        PartAssembly.of(
            placement(placed("CONN1234", "0805", 10, 10), placed("CONN1299", "0805", 30, 10)),
            netlist(pad("CONN12", "VCC", 10, 10), pad("CONN12", "GND", 30, 10)),
            Map.of());
    assertTrue(
        joined.gaps().toString().contains("CONN1234 and CONN1299 are all written CONN12"),
        joined.gaps().toString());
    assertEquals(2, joined.parts().size());
  }

  @Test
  void filesOfDifferentBoardsAreToldApart() {
    PartAssembly joined =
        PartAssembly.of(
            placement(placed("C1", "0805", 10, 10)), netlist(pad("Q9", "A", 1, 1)), Map.of());
    assertTrue(joined.gaps().get(0).contains("no part in common"));
  }

  @Test
  void aRailIsFoundUnderTheSignOrPathADrawingProgramPutsBeforeIt() {
    List<String> gaps = new ArrayList<>();
    Rail rail = new Rail("3V3", 3.3, 2, Optional.empty());
    Rail other = new Rail("CORE", 1, 0.8, Optional.empty());
    Rail absent = new Rail("5V0", 5, 4, Optional.empty());
    Netlist named =
        RailNets.named(
            netlist(pad("C1", "+3V3", 1, 1), pad("C2", "V_CORE_1", 1, 1)).orElseThrow(),
            List.of(rail, other, absent),
            Map.of("CORE", "V_CORE_1"),
            gaps);
    assertEquals("3V3", named.pads().get(0).net());
    assertEquals("CORE", named.pads().get(1).net());
    assertEquals(1, gaps.size());
    assertTrue(gaps.get(0).contains("no pad of the netlist is on rail 5V0"));
  }
}
