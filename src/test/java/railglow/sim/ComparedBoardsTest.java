package railglow.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import railglow.board.compare.PlaneComparison;
import railglow.board.geometry.BoardPosition;
import railglow.board.geometry.Registration;
import railglow.config.BoardFile;
import railglow.thermal.Plane;

/**
 * A healthy and a faulty simulated board, each pulsed by itself, compared over the whole picture.
 */
class ComparedBoardsTest {
  private static final double VOLTS = 1.5;

  /** Leads and clips of the simulated bench, ohm. */
  private static final double LEADS = 0.12;

  private static PlaneComparison.Side side(String scenario, long seed, double ohms)
      throws Exception {
    double[] rise =
        new PulsedBench(BenchScenarios.named(scenario).orElseThrow().withSeed(seed), VOLTS, 2)
            .inPhaseKelvin(8);
    Plane plane = new Plane(256, 192);
    for (int i = 0; i < rise.length; i++) {
      plane.values()[i] = (float) rise[i];
    }
    double amperes = VOLTS / (ohms + LEADS);
    Registration registration =
        BoardFile.read(Path.of("docs/examples/hx12/board.yaml"))
            .board()
            .registration()
            .orElseThrow();
    return new PlaneComparison.Side(plane, amperes * amperes * ohms, Optional.of(registration));
  }

  /**
   * C37 is at (78, 31) mm; it takes most of the faulty board's current and none of the good one's.
   */
  @Test
  void thePartAtFaultIsWarmerPerWattThanOnAKnownGoodBoard() throws Exception {
    PlaneComparison comparison = PlaneComparison.of(side("healthy", 21, 45), side("hx12", 22, 6.8));
    PlaneComparison.Place place = comparison.places().get(0);
    BoardPosition at = place.board().orElseThrow();
    assertEquals(78, at.xMillimetres(), 1.5);
    assertEquals(31, at.yMillimetres(), 1.5);
    // Sixteen seconds at the 50 mW a healthy board takes: its noise per watt is most of the error.
    assertTrue(place.difference() > 0, place.toString());
    assertTrue(place.p() < 0.01, place.toString());
  }
}
