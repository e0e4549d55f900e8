package railglow.thermal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import railglow.units.Interval;

class HeatShapeTest {
  private static final int WIDTH = 128;
  private static final int HEIGHT = 96;

  private static Plane ellipse(
      double longer, double shorter, double degrees, double noise, long seed) {
    Plane plane = new Plane(WIDTH, HEIGHT);
    Random random = new Random(seed);
    double cos = Math.cos(Math.toRadians(degrees));
    double sin = Math.sin(Math.toRadians(degrees));
    for (int r = 0; r < HEIGHT; r++) {
      for (int c = 0; c < WIDTH; c++) {
        double along = (c - 60.3) * cos + (r - 47.6) * sin;
        double across = (r - 47.6) * cos - (c - 60.3) * sin;
        double value =
            Math.exp(-0.5 * (Math.pow(along / longer, 2) + Math.pow(across / shorter, 2)));
        plane.values()[r * WIDTH + c] = (float) (value + noise * random.nextGaussian());
      }
    }
    return plane;
  }

  private static HeatSource source(double inPhase, double quadrature) {
    Interval any = new Interval(0.9, 1.1);
    return InventedSource.at(61, 48)
        .variance(0.1)
        .rises(1, any)
        .channels(inPhase, quadrature)
        .width(3)
        .p(1e-6)
        .source();
  }

  @ParameterizedTest
  @CsvSource({"3, 3, 0", "6, 3, 0", "9, 3, 30", "5, 4, 120", "12, 4, 90"})
  void theAxesOfAnEllipseAreFoundWithoutNoise(double longer, double shorter, double degrees) {
    Plane plane = ellipse(longer, shorter, degrees, 0, 1);
    HeatShape shape = HeatShape.of(plane, new Plane(WIDTH, HEIGHT), source(1, 0));
    assertEquals(longer, shape.longPixels(), 0.02 * longer);
    assertEquals(shorter, shape.shortPixels(), 0.02 * shorter);
    assertEquals(60.3, shape.column(), 0.05);
    assertEquals(47.6, shape.row(), 0.05);
    if (longer > shorter) {
      double cos = Math.cos(Math.toRadians(degrees));
      double sin = Math.sin(Math.toRadians(degrees));
      assertEquals(1, Math.abs(shape.alongColumn() * cos + shape.alongRow() * sin), 1e-3);
    }
  }

  @Test
  void itsErrorIsThatOfRepeatedNoise() {
    int runs = 60;
    double sum = 0;
    double squares = 0;
    double stated = 0;
    for (int k = 0; k < runs; k++) {
      HeatShape shape =
          HeatShape.of(ellipse(6, 3, 20, 0.02, k), new Plane(WIDTH, HEIGHT), source(1, 0));
      sum += shape.ratio();
      squares += shape.ratio() * shape.ratio();
      stated += shape.ratioSigma() / runs;
    }
    double mean = sum / runs;
    double scatter = Math.sqrt(squares / runs - mean * mean);
    assertEquals(2, mean, 3 * scatter / Math.sqrt(runs) + 0.03);
    assertTrue(stated > 0.6 * scatter && stated < 1.7 * scatter, stated + " against " + scatter);
  }

  @Test
  void heatThatIsAllSlowIsMeasuredInTheSlowPlane() {
    Plane slow = ellipse(7, 3, 0, 0, 1);
    HeatShape shape = HeatShape.of(new Plane(WIDTH, HEIGHT), slow, source(0, 1));
    assertEquals(7.0 / 3, shape.ratio(), 0.05);
  }

  @Test
  void whereThereIsNoHeatNothingIsSaid() {
    Plane none = new Plane(WIDTH, HEIGHT);
    assertEquals(HeatShape.UNKNOWN, HeatShape.of(none, none, source(1, 0)));
    assertEquals(HeatShape.UNKNOWN, HeatShape.of(none, none, source(0, 0)));
  }
}
