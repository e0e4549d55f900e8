package railglow.sim.heat;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

class BoardHeatTest {
  private static final PlacedPart PART =
      new PlacedPart("U1", 10e-3, 10e-3, 4e-3, 4e-3, 0.05, 0.02, 1, 0.9, true);

  private static BoardHeat board(PlacedPart part, double coefficient) {
    PlateMaterial material = PlateMaterial.board(1.6e-3, 70e-6);
    ThinPlate plate = new ThinPlate(20, 20, 1e-3, material, SurfaceLoss.constant(coefficient));
    return new BoardHeat(plate, List.of(part), coefficient);
  }

  @Property(tries = 50, seed = "1")
  void noHeatIsLostInsideAnInsulatedBoard(
      @ForAll @DoubleRange(min = 0.01, max = 0.2) double seconds,
      @ForAll @DoubleRange(min = 0, max = 1) double bodyShare) {
    BoardHeat heat = board(PART.withBodyShare(bodyShare), 0);
    for (int k = 0; k < 40; k++) {
      heat.advance(seconds, new double[] {k < 25 ? 0.3 * seconds : 0}, 0);
    }
    double stored = PART.heatCapacity() * heat.partRise(0);
    for (float rise : heat.plate().rise()) {
      stored += rise * heat.plate().cellCapacity();
    }
    assertEquals(25 * 0.3 * seconds, stored, 2e-5 * 25 * 0.3 * seconds + 1e-7);
  }

  @Test
  void aPartOnAColdBoardIsAFirstOrderBody() {
    // tau = C / G = 2.5 s on a board of enormous capacity, driven half on, half off.
    PlateMaterial endless = new PlateMaterial(1.6e-3, 17, 1e12);
    ThinPlate plate = new ThinPlate(20, 20, 1e-3, endless, SurfaceLoss.constant(0));
    // 1 - (4 tau / P) tanh(P / 4 tau) of the final rise: the exact mean of a first-order body's
    // periodic response over its halves (own derivation, integrated numerically as a check).
    assertEquals(0.238406, inPhase(new BoardHeat(plate, List.of(PART), 0), 4 * 2.5), 2e-4);
    assertEquals(0.800018, inPhase(new BoardHeat(plate, List.of(PART), 0), 20 * 2.5), 2e-4);
  }

  private static double inPhase(BoardHeat heat, double period) {
    int steps = 2000;
    double dt = period / steps;
    double mean = 0;
    for (int k = 0; k < 40 * steps; k++) {
      boolean on = k % steps < steps / 2;
      double before = heat.partRise(0);
      heat.advance(dt, new double[] {on ? dt : 0}, 0);
      if (k >= 39 * steps) {
        mean += (on ? 1 : -1) * (before + heat.partRise(0)) / 2 / (steps / 2.0);
      }
    }
    return mean / (1 / PART.contactConductance());
  }

  /** A small part in good contact settles with what is under it within some 20 ms. */
  @Test
  void aPartWarmsAlikeHoweverFinelyItIsFollowed() {
    PlacedPart small = new PlacedPart("C1", 10e-3, 10e-3, 1e-3, 2e-3, 0.007, 0.15, 0.15, 0.9, true);
    double[] rises = new double[2];
    for (int k = 0; k < 2; k++) {
      BoardHeat heat = board(small, 0);
      double step = k == 0 ? 0.2 : 0.001;
      for (int n = 0; n < Math.round(1 / step); n++) {
        heat.advance(step, new double[] {0.1 * step}, 0);
      }
      rises[k] = heat.partRise(0);
    }
    assertEquals(rises[1], rises[0], 0.005 * rises[1]);
  }

  @Test
  void heatAllOverTheBoardWarmsItEvenly() {
    BoardHeat heat = board(PART, 0);
    heat.advance(1, new double[] {0}, 4);
    double stored = PART.heatCapacity() * heat.partRise(0);
    double least = Double.MAX_VALUE;
    double most = 0;
    for (float rise : heat.plate().rise()) {
      stored += rise * heat.plate().cellCapacity();
      least = Math.min(least, rise);
      most = Math.max(most, rise);
    }
    assertEquals(4, stored, 1e-4, "all of it is there");
    // In the corner, far from the part that cools the cells under it: Q / C of the bare board.
    double bare = 4 / (400 * heat.plate().cellCapacity());
    assertEquals(bare, heat.plate().rise()[0], 0.002 * bare);
    assertTrue(least > 0.85 * most, least + " K to " + most + " K");
  }

  @Test
  void aPartBetweenCellCentresStillTouchesTheBoard() {
    PlacedPart tiny = new PlacedPart("R1", 5e-3, 5e-3, 0.2e-3, 0.2e-3, 1e-3, 0.01, 1, 0.9, true);
    BoardHeat heat = board(tiny, 0);
    heat.advance(1, new double[] {0.1}, 0);
    float warmest = 0;
    for (float rise : heat.plate().rise()) {
      warmest = Math.max(warmest, rise);
    }
    assertTrue(warmest > 0);
  }

  @Test
  void aPowerTransistorOnABareBoardWarmsByAboutTenKelvin() {
    // Common practice, no published source: 1 V into 4 ohm warms a small power transistor on a bare
    // multilayer board by about 10 K.
    PlateMaterial multilayer = PlateMaterial.board(1.6e-3, 70e-6);
    SurfaceLoss air = SurfaceLoss.levelPlateInAir(0.1, 0.9, 296);
    ThinPlate plate = new ThinPlate(100, 80, 1e-3, multilayer, air);
    PlacedPart transistor = PlacedPart.of("Q1", 50e-3, 40e-3, 6.5e-3, 6e-3, 2.3e-3, 1500, 0.9);
    BoardHeat heat = new BoardHeat(plate, List.of(transistor), 10);
    for (int k = 0; k < 600; k++) {
      heat.advance(0.5, new double[] {0.25 * 0.5}, 0);
    }
    assertTrue(heat.partRise(0) > 4 && heat.partRise(0) < 16, "rise " + heat.partRise(0));
  }
}
