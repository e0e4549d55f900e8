package railglow.thermal;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

class LateHeatTest {
  private static double[] at(double degrees) {
    double radians = Math.toRadians(degrees);
    return new double[] {Math.cos(radians), Math.sin(radians)};
  }

  /** Twice exp(-x); exp(-pi) = 0.0432139, exp(-2 pi) = 0.00186744 (bc, 12 digits). */
  @Test
  void heatIsWeakerByOneOverEForEveryRadianItComesLater() {
    assertEquals(1, LateHeat.share(at(100), at(130)), 1e-12);
    assertEquals(2 * 0.0432139, LateHeat.share(at(10), at(190)), 1e-6);
    assertEquals(2 * Math.exp(-Math.PI / 2), LateHeat.share(at(140), at(230)), 1e-12);
    assertEquals(2 * 0.0432139, LateHeat.share(at(150), at(-30)), 1e-6);
  }

  @Test
  void whatSeemsToComeBeforeASourceOrWithItMayBeItsHeatOfThePulseBefore() {
    assertEquals(2 * 0.00186744, LateHeat.shareAtNextPulse(at(60), at(60)), 1e-8);
    assertEquals(
        2 * Math.exp(-Math.toRadians(220)), LateHeat.shareAtNextPulse(at(139), at(-1)), 1e-12);
    assertEquals(
        2 * Math.exp(-Math.toRadians(380)), LateHeat.shareAtNextPulse(at(60), at(80)), 1e-12);
  }
}
