package railglow.board;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import railglow.board.geometry.Registration;
import railglow.board.geometry.RegistrationPoint;
import railglow.board.imports.Netlist;
import railglow.board.imports.Pad;
import railglow.thermal.HeatSource;
import railglow.thermal.InventedSource;
import railglow.units.Interval;

class SuspectRankingTest {
  private static final Interval NORMAL = new Interval(45, 600);

  private static Part part(String reference, double x, double y, Side side, String... nets) {
    return new Part(reference, "", "", x, y, 2, 1.25, 0, side, Set.of(nets));
  }

  private static Pad pad(String reference, String pin, String net, double x, double y) {
    return new Pad(net, reference, pin, x, y, 1, 1, 0, Pad.Access.TOP, false, 1);
  }

  private static Board board(boolean netlist, boolean registered, Part... parts) {
    List<RegistrationPoint> points = new ArrayList<>();
    for (double[] at : new double[][] {{0, 0}, {100, 0}, {100, 80}, {0, 80}, {50, 40}}) {
      points.add(new RegistrationPoint("P", at[0], at[1], 8 + 2 * at[0], 176 - 2 * at[1]));
    }
    List<Pad> pads = new ArrayList<>();
    for (Part part : parts) {
      int pin = 1;
      for (String net : part.nets()) {
        pads.add(
            pad(
                part.reference(),
                Integer.toString(pin++),
                net,
                part.xMillimetres(),
                part.yMillimetres()));
      }
    }
    return new Board(
        "test",
        100,
        80,
        Side.TOP,
        List.of(new Rail("VCC", 3.3, 2.6, Optional.of(NORMAL))),
        List.of(parts),
        netlist ? Optional.of(new Netlist(pads, List.of())) : Optional.empty(),
        registered ? Optional.of(Registration.of(points, 0.1)) : Optional.empty(),
        Optional.empty(),
        BoardCare.NONE,
        List.of(),
        List.of());
  }

  private static HeatSource at(double x, double y, double sigmaMillimetres) {
    double variance = Math.pow(2 * sigmaMillimetres, 2);
    return InventedSource.at(8 + 2 * x, 176 - 2 * y)
        .variance(variance)
        .rises(1, NORMAL)
        .p(1e-3)
        .source();
  }

  private static List<String> names(List<Suspect> suspects) {
    return suspects.stream().map(Suspect::part).toList();
  }

  @Test
  void thePartUnderTheHeatComesFirstAndPartsFarAwayAreNotNamed() {
    Board board =
        board(
            true,
            true,
            part("C2", 33, 30, Side.TOP, "VCC", "GND"),
            part("C1", 30, 30, Side.TOP, "VCC", "GND"),
            part("C9", 60, 30, Side.TOP, "VCC", "GND"));
    List<Suspect> suspects = Ranked.suspects(board, "VCC", List.of(at(30.2, 30, 0.1)));
    assertEquals(List.of("C1", "C2"), names(suspects));
    assertEquals(0, suspects.get(0).distanceMillimetres());
    assertEquals(1.8, suspects.get(1).distanceMillimetres(), 1e-6);
    assertEquals(
        "Lift C1; VCC should then read 45 ohm or more.",
        Ranked.nextStep(board, "VCC", suspects, 6.8));
  }

  @Test
  void aPartOfAnotherRailUnderTheHeatComesAfterOneOnTheRail() {
    Board board =
        board(
            true,
            true,
            part("C1", 30, 30, Side.TOP, "OTHER", "GND"),
            part("C2", 32.2, 30, Side.TOP, "VCC", "GND"));
    List<Suspect> suspects = Ranked.suspects(board, "VCC", List.of(at(31, 30, 0.3)));
    assertEquals(List.of("C2", "C1"), names(suspects));
    assertFalse(suspects.get(1).onRail());
    assertTrue(suspects.get(1).reason().contains("without a pad on VCC"));
  }

  @Test
  void aWideErrorLeavesSeveralSuspectsAndTheNextStepNamesTheSecond() {
    Board board =
        board(
            true,
            true,
            part("R1", 30, 30, Side.TOP, "VCC", "SDA"),
            part("C2", 30, 31.6, Side.TOP, "VCC", "GND"),
            part("D3", 30, 28.4, Side.TOP, "VCC", "GND"));
    List<Suspect> suspects = Ranked.suspects(board, "VCC", List.of(at(30, 30.3, 0.8)));
    assertEquals(List.of("C2", "D3", "R1"), names(suspects));
    assertTrue(
        Ranked.nextStep(board, "VCC", suspects, 6.8).endsWith("If it does not, lift D3 next."));
  }

  @Test
  void aPartThatMayOnlyCarryTheCurrentAsksForAnotherPoint() {
    Part sense = new Part("R7", "20 mohm", "", 30, 30, 2, 1, 0, Side.TOP, Set.of("VCC", "VCC_S"));
    for (Part path : List.of(part("L1", 30, 30, Side.TOP, "VCC", "SW"), sense)) {
      Board board = board(true, true, path);
      List<Suspect> suspects = Ranked.suspects(board, "VCC", List.of(at(30, 30, 0.1)));
      assertTrue(suspects.get(0).reason().contains("may only carry the current"));
      assertTrue(Ranked.nextStep(board, "VCC", suspects, 6.8).contains("another point of VCC"));
    }
  }

  @Test
  void theFaultOfAWarmerPathIsNamedBeforeThePath() {
    Board board =
        board(
            true,
            true,
            part("L1", 30, 30, Side.TOP, "VCC", "SW"),
            part("C2", 60, 30, Side.TOP, "VCC", "GND"));
    List<Suspect> suspects =
        Ranked.suspects(board, "VCC", List.of(at(30, 30, 0.1), at(60, 30, 0.1)));
    assertEquals(List.of("C2", "L1"), names(suspects));
    assertEquals(1, suspects.get(0).sourceIndex());
  }

  @Test
  void twoSourcesEachNameTheirPartBeforeAnySecondChoice() {
    Board board =
        board(
            true,
            true,
            part("C1", 30, 30, Side.TOP, "VCC", "GND"),
            part("C2", 32.5, 30, Side.TOP, "VCC", "GND"),
            part("C3", 60, 30, Side.TOP, "VCC", "GND"));
    List<Suspect> suspects =
        Ranked.suspects(board, "VCC", List.of(at(30, 30, 0.1), at(60, 30, 0.1)));
    assertEquals(List.of("C1", "C3", "C2"), names(suspects));
  }

  @Test
  void aPartOfTheOtherSideIsNamedAsSuch() {
    Board board = board(true, true, part("C1", 30, 30, Side.BOTTOM, "VCC", "GND"));
    List<Suspect> suspects = Ranked.suspects(board, "VCC", List.of(at(30, 30, 0.1)));
    assertTrue(suspects.get(0).reason().contains("on the other side"));
  }

  @Test
  void withoutANetlistPartsAreNamedByPlaceAndTheReasonSaysSo() {
    Board board = board(false, true, part("C1", 30, 30, Side.TOP));
    List<Suspect> suspects = Ranked.suspects(board, "VCC", List.of(at(30, 30, 0.1)));
    assertEquals(List.of("C1"), names(suspects));
    assertFalse(suspects.get(0).onRail());
    assertTrue(suspects.get(0).reason().contains("without a netlist"));
  }

  @Test
  void withoutARegistrationNothingIsNamedAndTheNextStepSaysWhy() {
    Board board = board(true, false, part("C1", 30, 30, Side.TOP, "VCC"));
    assertEquals(List.of(), Ranked.suspects(board, "VCC", List.of(at(30, 30, 0.1))));
    assertTrue(Ranked.nextStep(board, "VCC", List.of(), 6.8).contains("four registration points"));
  }

  @Test
  void aChipIsFreedByItsPinsOnTheRail() {
    Board board = board(true, true, part("U1", 30, 30, Side.TOP, "GND", "VCC"));
    List<Suspect> suspects = Ranked.suspects(board, "VCC", List.of(at(30, 30, 0.1)));
    assertEquals(
        "Free U1 from VCC (pin 2) or remove it; VCC should then read 45 ohm or more.",
        Ranked.nextStep(board, "VCC", suspects, 6.8));
  }

  @Test
  void withoutANormalReadingTheNextStepComparesWithTheReadingOfNow() {
    Board board = board(true, true, part("C1", 30, 30, Side.TOP, "AUX", "GND"));
    List<Suspect> suspects = Ranked.suspects(board, "AUX", List.of(at(30, 30, 0.1)));
    assertEquals(
        "Lift C1; AUX should then read clearly more than the 6.8 ohm of now.",
        Ranked.nextStep(board, "AUX", suspects, 6.8));
  }

  @Test
  void aPartBehindAFerriteOfTheRailIsReachedAndComesBeforeTheFerrite() {
    Board board =
        board(
            true,
            true,
            part("FB1", 30, 30, Side.TOP, "VCC", "VCCA"),
            part("C9", 60, 30, Side.TOP, "VCCA", "GND"),
            part("C8", 80, 30, Side.TOP, "OTHER", "GND"));
    List<Suspect> suspects =
        Ranked.suspects(board, "VCC", List.of(at(30, 30, 0.1), at(60, 30, 0.1), at(80, 30, 0.1)));
    assertEquals(List.of("C9", "FB1", "C8"), names(suspects));
    assertFalse(suspects.get(0).onRail());
    assertTrue(suspects.get(0).reason().contains("behind FB1"), suspects.get(0).reason());
    assertEquals(
        "Lift C9; VCC should then read 45 ohm or more.",
        Ranked.nextStep(board, "VCC", suspects, 6.8));
  }

  @Test
  void currentDoesNotPassAGroundAnotherRailOrALargeResistor() {
    Board board =
        board(
            true,
            true,
            new Part("R1", "10 kohm", "", 10, 10, 2, 1, 0, Side.TOP, Set.of("VCC", "A")),
            new Part("R2", "50 mohm", "", 20, 10, 2, 1, 0, Side.TOP, Set.of("VCC", "B")),
            new Part("L3", "", "", 30, 10, 2, 1, 0, Side.TOP, Set.of("VCC", "GND_PLANE")),
            part("C1", 40, 10, Side.TOP, "A", "GND_PLANE"),
            part("C2", 50, 10, Side.TOP, "B", "GND_PLANE"),
            part("C3", 60, 10, Side.TOP, "GND_PLANE", "C"));
    RailReach reach = RailReach.of(board, "VCC");
    assertEquals(java.util.Map.of("B", "R2"), reach.through());
  }

  @Test
  void aLargePartIsLocatedToItsCorner() {
    Part chip = new Part("U1", "", "", 40, 40, 16, 16, 0, Side.TOP, Set.of("VCC", "GND"));
    Board board = board(true, true, chip);
    List<Suspect> suspects = Ranked.suspects(board, "VCC", List.of(at(35, 45, 0.1)));
    assertTrue(
        suspects.get(0).reason().contains("at its upper left corner"), suspects.get(0).reason());
  }

  private static HeatSource after(double seconds, double x, double y) {
    HeatSource like = at(x, y, 0.1);
    return InventedSource.like(like).rises(1, NORMAL).timeConstant(seconds).p(1e-3).source();
  }

  @Test
  void thePartWhoseHeatComesFirstGoesBeforeAStrongerOneThatWasOnlyWarmed() {
    Board board =
        board(
            true,
            true,
            part("C1", 30, 30, Side.TOP, "VCC", "GND"),
            part("C2", 60, 30, Side.TOP, "VCC", "GND"));
    List<Suspect> suspects =
        Ranked.suspects(board, "VCC", List.of(after(3, 30, 30), after(0.4, 60, 30)));
    assertEquals(List.of("C2", "C1"), names(suspects));
    assertTrue(suspects.get(0).reason().contains("its heat comes first, after 0.4 s"));
    assertTrue(
        suspects.get(1).reason().contains("it may only be warmed"), suspects.get(1).reason());
    List<Suspect> together =
        Ranked.suspects(board, "VCC", List.of(after(0.7, 30, 30), after(0.4, 60, 30)));
    assertEquals(List.of("C1", "C2"), names(together));
  }

  /** 1 K at 0.25 W is 4 K/W; 0.90 of the rise is seen on a ceramic body, so 1.11 K are there. */
  @Test
  void theSentenceTellsHeatPerPowerTheTrueRiseAndHowOftenSuchAPartLeaks() {
    Board board = board(true, true, part("C1", 30, 30, Side.TOP, "VCC", "GND"));
    HeatFacts facts = new HeatFacts(0.25, List.of(24.0), List.of());
    String reason = Ranked.suspects(board, "VCC", List.of(at(30, 30, 0.1)), facts).get(0).reason();
    assertTrue(reason.contains("; swings by 4.0 K/W"), reason);
    assertTrue(reason.contains("truly swings by 1.1"), reason);
    assertTrue(reason.contains("emissivity 0.90 +- 0.04"), reason);
    assertTrue(reason.contains("often leaks (common practice, no source)"), reason);
    assertFalse(
        Ranked.suspects(board, "VCC", List.of(at(30, 30, 0.1))).get(0).reason().contains("K/W"));
  }
}
