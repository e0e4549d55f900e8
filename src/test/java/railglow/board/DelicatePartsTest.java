package railglow.board;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DelicatePartsTest {
  private static final Rail RAIL = new Rail("3V3", 3.3, Double.NaN, Optional.empty());

  private static Part part(String reference, String value, String size, String... nets) {
    return new Part(reference, value, size, 1, 1, 1, 1, 0, Side.TOP, Set.of(nets));
  }

  private static DelicateParts on(List<PartLimit> limits, Part... parts) {
    Board board =
        new Board(
            "test",
            10,
            10,
            Side.TOP,
            List.of(RAIL),
            List.of(parts),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            new BoardCare(limits, List.of(), BoardSurfaces.USUAL, BoardPlate.USUAL, List.of()),
            List.of(),
            List.of());
    return DelicateParts.on(board, RAIL);
  }

  @Test
  void aStatedLimitHoldsOnlyForPartsTheCurrentReaches() {
    List<PartLimit> limits =
        List.of(
            new PartLimit("U1", 2, 0.9), new PartLimit("U2", 1, 0.1), new PartLimit("U3", 1.5, 3));
    DelicateParts found =
        on(
            limits,
            part("U1", "", "", "3V3", "GND"),
            part("U2", "", "", "5V0", "GND"),
            part("FB1", "600 ohm", "0603", "3V3", "3V3_A"),
            part("U3", "", "", "3V3_A", "GND"));
    assertEquals("U3", found.highestVolts().orElseThrow().reference());
    assertEquals("U1", found.mostAmperes().orElseThrow().reference());
  }

  @Test
  void aStatedLimitHoldsWhereThePartsNetsAreNotKnown() {
    DelicateParts found = on(List.of(new PartLimit("U1", 2, 0.9)), part("U1", "", ""));
    assertEquals(2, found.highestVolts().orElseThrow().value());
    assertEquals(2, on(List.of(new PartLimit("U9", 2, 1))).highestVolts().orElseThrow().value());
  }

  /** Chip resistor ratings at 70 degC as makers print them; of two series the lower. */
  @ParameterizedTest
  @CsvSource({
    "C1, 10 uF 2.5 V, 0805, GND, 2.5, Infinity",
    "C1, 10uF/6.3V X5R, 0805, GND, 6.3, Infinity",
    "C1, 10 uF, 0805, GND, Infinity, Infinity",
    "F1, 500 mA, 1206, 3V3_F, Infinity, 0.5",
    "L1, 4.7 uH 2 A, IND-4x4, 3V3_F, Infinity, 2",
    "R1, 20 mohm, R_0805, 3V3_F, Infinity, 2.2360679775",
    "R1, 1k, 0603, GND, Infinity, Infinity",
    "R1, 1 kohm, 0603, GND, 7.905694150, Infinity",
    "R1, 10 kohm, 0603, SIGNAL, Infinity, Infinity",
    "J1, 5 V in, TERM-2, GND, Infinity, Infinity",
    "U1, 1.8 V, SOT-23-5, GND, Infinity, Infinity"
  })
  void ratingsAreReadFromValuesAndSizes(
      String reference, String value, String size, String net, double volts, double amperes) {
    DelicateParts found = on(List.of(), part(reference, value, size, "3V3", net));
    assertEquals(volts, bears(found.highestVolts()), 1e-9);
    assertEquals(amperes, bears(found.mostAmperes()), 1e-9);
  }

  private static double bears(Optional<DelicateParts.Bears> found) {
    return found.map(DelicateParts.Bears::value).orElse(Double.POSITIVE_INFINITY);
  }

  @Test
  void partsOfOtherRailsSayNothing() {
    DelicateParts found = on(List.of(), part("C1", "10 uF 1 V", "0805", "5V0", "GND"));
    assertTrue(found.highestVolts().isEmpty() && found.mostAmperes().isEmpty());
  }
}
