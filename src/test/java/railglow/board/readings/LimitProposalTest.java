package railglow.board.readings;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import railglow.board.Board;
import railglow.board.BoardCare;
import railglow.board.BoardSurfaces;
import railglow.board.PartLimit;
import railglow.board.Rail;
import railglow.board.Side;

class LimitProposalTest {
  private static final InjectionMeans MEANS =
      new InjectionMeans(10, 3, 10, 0.1, 3, Double.POSITIVE_INFINITY);

  private static Board board(PartLimit... limits) {
    return new Board(
        "test",
        10,
        10,
        Side.TOP,
        List.of(),
        List.of(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        new BoardCare(
            List.of(limits),
            List.of(),
            BoardSurfaces.USUAL,
            railglow.board.BoardPlate.USUAL,
            List.of()),
        List.of(),
        List.of());
  }

  private static Rail rail(double nominal, double highest) {
    return new Rail("R", nominal, highest, Optional.empty());
  }

  @Test
  void aLeakOfSomeOhmsGetsAboutAWattBelowTheRailsLimit() {
    LimitProposal proposal = LimitProposal.of(board(), rail(3.3, 2.6), 6.8, MEANS);
    assertEquals(2.6, proposal.volts(), 1e-9);
    assertFalse(proposal.constantCurrent());
    double amperes = 2.6 / 6.9;
    assertEquals(amperes * amperes * 6.8, proposal.faultWatts(), 1e-9);
    assertTrue(proposal.amperes() > amperes && proposal.amperes() < 1.4 * amperes);
  }

  @Test
  void aDeadShortPullsTheSupplyIntoConstantCurrentAndSaysSo() {
    LimitProposal proposal = LimitProposal.of(board(), rail(5, Double.NaN), 0.02, MEANS);
    assertTrue(proposal.constantCurrent());
    assertEquals(3, proposal.amperes(), 1e-9);
    assertEquals(0.18, proposal.faultWatts(), 1e-9);
    assertEquals(0.9, proposal.leadWatts(), 1e-9);
    assertTrue(proposal.reasons().toString().contains("constant current"));
    assertTrue(proposal.cautions().toString().contains("More power goes into the leads"));
    assertTrue(proposal.volts() < 0.5, "an opening short must not see the full level");
  }

  @Test
  void theMostDelicatePartRules() {
    LimitProposal proposal =
        LimitProposal.of(board(new PartLimit("U5", 0.9, 0.2)), rail(3.3, Double.NaN), 6.8, MEANS);
    assertEquals(0.9, proposal.maxVolts(), 1e-9);
    assertTrue(proposal.amperes() <= 0.2);
    assertTrue(proposal.reasons().get(0).contains("U5, the most delicate part"));
  }

  @Test
  void aRailWithoutNominalGetsOneVoltAtMost() {
    LimitProposal proposal = LimitProposal.of(board(), rail(Double.NaN, Double.NaN), 6.8, MEANS);
    assertEquals(1.0, proposal.volts(), 1e-9);
    assertTrue(proposal.reasons().get(0).contains("not known"));
  }

  @Test
  void aRailThatWasNotReadIsStartedGently() {
    LimitProposal proposal = LimitProposal.of(board(), rail(5, Double.NaN), Double.NaN, MEANS);
    assertEquals(0.1, proposal.amperes(), 1e-9);
    assertTrue(proposal.volts() <= 1.0);
    assertTrue(Double.isNaN(proposal.faultWatts()));
  }

  @Property(tries = 200, seed = "1")
  void noProposalExceedsAnyLimitItKnows(
      @ForAll @DoubleRange(min = 0, max = 2000) double ohms,
      @ForAll @DoubleRange(min = 0.5, max = 24) double nominal,
      @ForAll @DoubleRange(min = 0.05, max = 5) double amperes,
      @ForAll @DoubleRange(min = 0.1, max = 20) double watts,
      @ForAll @DoubleRange(min = 0, max = 2) double leads) {
    InjectionMeans means = new InjectionMeans(12, amperes, watts, leads, 4, 6);
    LimitProposal proposal = LimitProposal.of(board(), rail(nominal, Double.NaN), ohms, means);
    assertTrue(proposal.volts() <= 0.8 * nominal + 1e-9 && proposal.volts() <= 12);
    assertTrue(proposal.amperes() <= Math.min(amperes, 4) + 1e-9);
    assertTrue(proposal.worstWatts() <= watts + 1e-9);
    assertTrue(proposal.volts() > 0 && proposal.amperes() > 0);
  }

  /**
   * Crossover at Vset/Iset. 30 V, 5 A: 8 ohm stays in CV at 3.75 A, 5 ohm goes into CC at 25 V
   * (National Instruments RMX-4125 manual, page 39). 5 V, 2 A, 1 ohm: CC at 2 A and 2 V (BK
   * Precision 9122 manual, page 19). The rest by Ohm's and Joule's laws: 1 V into 50 milliohm, 0.5
   * and 5 ohm gives 20, 2 and 0.2 W where nothing limits the current.
   */
  @ParameterizedTest
  @CsvSource({
    "30, 5, 8, 30, 3.75, false",
    "30, 5, 5, 25, 5, true",
    "5, 2, 1, 2, 2, true",
    "1, 1000, 0.05, 1, 20, false",
    "1, 1000, 0.5, 1, 2, false",
    "1, 1000, 5, 1, 0.2, false",
    "1, 2, 0.05, 0.1, 2, true"
  })
  void aSupplySettlesWhereItsManualSays(
      double volts, double limit, double ohms, double atLoad, double amperes, boolean cc) {
    OperatingPoint point = OperatingPoint.of(volts, limit, ohms);
    assertEquals(atLoad, point.volts(), 1e-12);
    assertEquals(amperes, point.amperes(), 1e-12);
    assertEquals(cc, point.constantCurrent());
    assertEquals(atLoad * amperes, point.watts(), 1e-12);
  }

  @Test
  void leadsAndThermalVoltagesAreTakenOut() {
    // Current reversal (V+ - V-) / 2: Tektronix, "Low-resistance measurement" (current reversal,
    // offset compensation, delta). The example of 0.1 ohm at 1 mA with 10 uV of thermal voltage,
    // and the three readings of the delta mode: Keithley 2182 manual, pages 97 and 324.
    assertEquals(100e-6, LeadCompensation.reversedVolts(110e-6, -90e-6), 1e-18);
    assertEquals(10e-3, LeadCompensation.deltaVolts(10.01e-3, -9.99e-3, 10.01e-3), 1e-15);
    // Standard errors of these linear combinations for unit noise: sqrt(6) / 4 and sqrt(2) / 2.
    assertEquals(0.612372, LeadCompensation.deltaNoise(), 1e-6);
    assertEquals(0.707107, LeadCompensation.reversedNoise(), 1e-6);
    // 0.1 ohm through 0.1 ohm of leads reads 0.2 ohm on two wires, 0.1 ohm on four (the textbook
    // example of four-terminal sensing).
    RailReading twoWire = LeadCompensation.injected("R", 0.2, 1, 0.1, 1e-4, 1e-4, 0.01);
    assertEquals(0.2, twoWire.readOhms(), 1e-12);
    assertEquals(0.1, twoWire.railOhms(), 1e-12);
    assertEquals(0.01, twoWire.sigmaOhms(), 1e-4);
    RailReading fourWire = LeadCompensation.injected("R", 0.1, 1, 0, 1e-4, 1e-4, 0);
    assertEquals(0.1, fourWire.readOhms(), 1e-12);
    assertEquals(0.1, fourWire.railOhms(), 1e-12);
    assertThrows(
        IllegalArgumentException.class,
        () -> LeadCompensation.injected("R", 1, 0, 0, 1e-3, 1e-3, 0));
  }
}
