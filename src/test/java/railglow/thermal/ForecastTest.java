package railglow.thermal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class ForecastTest {
  private static final DetectionSettings MINUTE = DetectionSettings.usual(2, 0, 0.05, 4, 30);
  private static final PulseNoise CAMERA = PulseNoise.white(0.05, 25);

  /**
   * By hand: 1500 frames of 50 mK give 2 x 50/sqrt(1500) = 2.58 mK per pixel, a filter gain of 2
   * sqrt(pi) = 3.54 leaves 0.73 mK; a threshold near 4.9 and 95 % power need 5 to 6.7 times that.
   */
  @Test
  void oneMinuteSeesAFewMillikelvin() {
    double smallest = Forecast.of(MINUTE, 256, 192, CAMERA, 2, 0).smallestRiseKelvin(30);
    assertTrue(smallest > 5.5 * 0.00073 && smallest < 6.9 * 0.00073, () -> smallest + " K");
  }

  @Test
  void strongerSourcesAreFoundSoonerAndSlowBodiesLater() {
    Forecast fast = Forecast.of(MINUTE, 256, 192, CAMERA, 2, 0);
    Forecast slow = Forecast.of(MINUTE, 256, 192, CAMERA, 2, 2);
    assertEquals(8, fast.secondsToFind(0.2, 0.95));
    assertTrue(fast.secondsToFind(0.01, 0.5) < fast.secondsToFind(0.005, 0.5));
    assertTrue(slow.smallestRiseKelvin(30) > 5 * fast.smallestRiseKelvin(30));
    assertEquals(Double.POSITIVE_INFINITY, fast.secondsToFind(0.0005, 0.5));
    assertEquals(Double.POSITIVE_INFINITY, fast.smallestRiseKelvin(2));
    assertTrue(fast.probabilityOfFinding(0, 30) < 1e-5);
  }

  @Test
  void correlatedFramesAreWorthLess() {
    PulseNoise smoothed = new PulseNoise(0.05, 25, 0.887, 1);
    assertTrue(smoothed.inPhaseVariance(2) > 5 * CAMERA.inPhaseVariance(2));
    assertEquals(0.05 * 0.05 / 12.5, CAMERA.inPhaseVariance(2), 1e-12);
    assertThrows(IllegalArgumentException.class, () -> new PulseNoise(0.05, 25, 1, 1));
  }

  /** The first cycles' slopes are known worse, and slopes are part of the quadrature alone. */
  @Test
  void atFewCyclesASlowBodyAsStrongAsAFastOneIsFoundLater() {
    double ratio = FirstOrderResponse.of(0, 2).size() / FirstOrderResponse.of(2, 2).size();
    double fast = Forecast.of(MINUTE, 96, 72, CAMERA, 2, 0).probabilityOfFinding(0.008, 6);
    double slow = Forecast.of(MINUTE, 96, 72, CAMERA, 2, 2).probabilityOfFinding(ratio * 0.008, 6);
    assertTrue(slow < fast - 0.01, slow + " against " + fast);
  }

  /** Rows and columns that move as wholes are taken out, and some of the source with them. */
  @Test
  void linesThatMoveAsWholesAskForMoreRise() {
    double white = Forecast.of(MINUTE, 96, 72, CAMERA, 2, 0).smallestRiseKelvin(30);
    double lines =
        Forecast.of(MINUTE, 96, 72, CAMERA.withLines(0.025, 0.025), 2, 0).smallestRiseKelvin(30);
    assertEquals(1.09, lines / white, 0.04);
  }
}
