package railglow.thermal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

class SeveralSourcesTest {
  private static final DetectionSettings SETTINGS = DetectionSettings.usual(2, 0, 0.05, 4, 12);
  // 1.5 times the full width at half maximum of a spot of sigma 2
  private static final double APART = 1.5 * 2 * Math.sqrt(2 * Math.log(2)) * 2;

  private static Look run(WhiteCycles cycles) {
    Detector detector = new Detector(SETTINGS, 96, 72);
    for (int k = 0; k < 12; k++) {
      detector.addCycle(cycles.next());
    }
    return detector.look();
  }

  @Test
  void twoEqualSourcesAtOneAndAHalfWidthsAreToldApart() {
    for (long seed = 1; seed <= 5; seed++) {
      Look look =
          run(
              new WhiteCycles(96, 72, 0.014, seed)
                  .with(new WhiteCycles.Source(40, 30, 2, 0.1, 0), 0, 2)
                  .with(new WhiteCycles.Source(40 + APART, 30, 2, 0.1, 0), 0, 2));
      List<HeatSource> sources = look.sources();
      assertEquals(2, sources.size());
      double first = Math.min(sources.get(0).column(), sources.get(1).column());
      double second = Math.max(sources.get(0).column(), sources.get(1).column());
      assertEquals(40, first, 0.3);
      assertEquals(40 + APART, second, 0.3);
    }
  }

  /** Each alone would score 20; a wide filter in their middle scores more than either. */
  @Test
  void equalSourcesNoStrongerThanNeedBeAreToldApartInAnyDirection() {
    double rise = 20 * 0.014 / (2 * Math.sqrt(Math.PI * 12));
    for (int k = 0; k < 6; k++) {
      double column = 47 + APART * Math.cos(0.5 * k);
      double row = 35 + APART * Math.sin(0.5 * k);
      List<HeatSource> sources =
          run(new WhiteCycles(96, 72, 0.014, 30 + k)
                  .with(new WhiteCycles.Source(47, 35, 2, rise, 0), 0, 2)
                  .with(new WhiteCycles.Source(column, row, 2, rise, 0), 0, 2))
              .sources();
      assertEquals(2, sources.size(), sources::toString);
      for (double[] truth : new double[][] {{47, 35}, {column, row}}) {
        assertTrue(
            sources.stream()
                .anyMatch(s -> Math.hypot(s.column() - truth[0], s.row() - truth[1]) < 0.8),
            sources::toString);
      }
    }
  }

  @Test
  void theWeakerOfOneToFiveIsNotLostInTheSkirtOfTheStronger() {
    for (long seed = 1; seed <= 5; seed++) {
      Look look =
          run(
              new WhiteCycles(96, 72, 0.014, seed)
                  .with(new WhiteCycles.Source(40, 30, 2, 0.5, 0), 0, 2)
                  .with(new WhiteCycles.Source(40 + APART, 30, 2, 0.1, 0), 0, 2));
      List<HeatSource> sources = look.sources();
      assertEquals(2, sources.size());
      assertEquals(40, sources.get(0).column(), 0.1);
      assertEquals(40 + APART, sources.get(1).column(), 0.4);
      assertEquals(0.1, sources.get(1).riseKelvin(), 0.03);
    }
  }

  /** Heat in a board falls off more slowly than a Gaussian: its skirts are no further sources. */
  @Test
  void oneSourceWithLongSkirtsStaysOneSource() {
    for (double rise : new double[] {0.2, 2, 20}) {
      Detector detector = new Detector(SETTINGS, 96, 72);
      WhiteCycles cycles = new WhiteCycles(96, 72, 0.014, 3);
      for (int k = 0; k < 12; k++) {
        QuarterMeans q = cycles.next();
        for (Plane plane : List.of(q.q2(), q.q3())) {
          for (int y = 0; y < 72; y++) {
            for (int x = 0; x < 96; x++) {
              double r = Math.sqrt(4 + Math.pow(x - 47.3, 2) + Math.pow(y - 35.8, 2));
              plane.set(x, y, plane.at(x, y) + (float) (rise * Math.exp(-(r - 2) / 4)));
            }
          }
        }
        detector.addCycle(q);
      }
      Look look = detector.look();
      assertEquals(1, look.sources().size(), () -> look.sources().toString());
      assertEquals(47.3, look.sources().get(0).column(), 0.5);
      assertTrue(look.sources().get(0).familyWiseP() < 1e-6);
    }
  }
}
