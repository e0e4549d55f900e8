package railglow.thermal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** Things that follow the pulse and are not, or not only, a source of heat. */
class NotHeatTest {
  private static final DetectionSettings SETTINGS = DetectionSettings.usual(2, 0, 0.05, 4, 12);

  /** A spot with any response, besides what the cycles hold already. */
  private static QuarterMeans with(QuarterMeans q, double inPhase, double quadrature) {
    double[] shares = {
      -inPhase / 2 - quadrature / 2,
      inPhase / 2 - quadrature / 2,
      inPhase / 2 + quadrature / 2,
      -inPhase / 2 + quadrature / 2
    };
    Plane[] planes = {q.q1(), q.q2(), q.q3(), q.q4()};
    for (int k = 0; k < 4; k++) {
      for (int y = 10; y < 30; y++) {
        for (int x = 10; x < 30; x++) {
          double shape = Math.exp(-(Math.pow(x - 20, 2) + Math.pow(y - 20, 2)) / 8);
          planes[k].set(x, y, planes[k].at(x, y) + (float) (shares[k] * shape));
        }
      }
    }
    return q;
  }

  @Test
  void whatComesTooLateIsRefusedAndTheHeatBesideItIsFound() {
    Detector detector = new Detector(SETTINGS, 96, 72);
    WhiteCycles cycles =
        new WhiteCycles(96, 72, 0.014, 5).with(new WhiteCycles.Source(60, 40, 2, 0.2, 0.3), 0, 2);
    for (int k = 0; k < 12; k++) {
      detector.addCycle(with(cycles.next(), -0.45, 0.1));
    }
    Look look = detector.look();
    assertEquals(1, look.sources().size(), () -> look.sources().toString());
    assertEquals(60, look.sources().get(0).column(), 0.3);
    assertEquals(look.sources().get(0), look.strongest());
    assertEquals(1, look.refused().size(), () -> look.refused().toString());
    assertEquals(NotHeat.LATER_THAN_A_BODY, look.refused().get(0).reason());
    assertEquals(20, look.refused().get(0).source().column(), 0.5);
  }

  @Test
  void whatComesBeforeThePulseIsRefused() {
    Detector detector = new Detector(SETTINGS, 96, 72);
    WhiteCycles cycles = new WhiteCycles(96, 72, 0.014, 6);
    for (int k = 0; k < 12; k++) {
      detector.addCycle(with(cycles.next(), 0.1, -0.1));
    }
    Look look = detector.look();
    assertEquals(List.of(), look.sources());
    assertEquals(NotHeat.AHEAD_OF_THE_PULSE, look.refused().get(0).reason());
  }

  /** Rows and columns that move with every frame, and a source with wide skirts. */
  @Test
  void theLinesThatCrossAStrongSourceAreNoFurtherSources() {
    SplittableRandom random = new SplittableRandom(1);
    WhiteCycles cycles = new WhiteCycles(112, 80, 0.014, 1);
    Detector detector = new Detector(DetectionSettings.usual(2, 0, 0.05, 4, 40), 112, 80);
    for (int k = 0; k < 40; k++) {
      QuarterMeans q = cycles.next();
      for (Plane plane : List.of(q.q1(), q.q2(), q.q3(), q.q4())) {
        boolean on = plane == q.q2() || plane == q.q3();
        double[] rows = random.doubles(80).map(d -> 0.03 * (d - 0.5)).toArray();
        double[] columns = random.doubles(112).map(d -> 0.06 * (d - 0.5)).toArray();
        for (int y = 0; y < 80; y++) {
          for (int x = 0; x < 112; x++) {
            double r = Math.sqrt(4 + Math.pow(x - 70.3, 2) + Math.pow(y - 40.8, 2));
            double heat = on ? 0.8 * Math.exp(-(r - 2) / 4) : 0;
            plane.set(x, y, plane.at(x, y) + (float) (heat + rows[y] + columns[x]));
          }
        }
      }
      detector.addCycle(q);
    }
    Look look = detector.look();
    assertEquals(1, look.sources().size(), () -> look.sources().toString());
    assertEquals(70.3, look.sources().get(0).column(), 0.3);
    double farOnTheRow = 0;
    for (int x = 5; x < 35; x++) {
      farOnTheRow += look.inPhase().at(x, 41) / 30;
    }
    assertTrue(Math.abs(farOnTheRow) < 0.0015, "left on the row: " + farOnTheRow);
  }
}
