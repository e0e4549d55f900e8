package railglow.sim.picture;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import org.apache.commons.math3.stat.descriptive.moment.Kurtosis;
import org.apache.commons.math3.stat.descriptive.moment.StandardDeviation;
import org.junit.jupiter.api.Test;

class SimulatedCameraTest {
  private static final int WIDTH = 64;
  private static final int HEIGHT = 48;

  private static CameraSettings settings(double noise, double lag, double weight) {
    return new CameraSettings(
        WIDTH, HEIGHT, 25, noise, 0, 0, 0, 0, lag, weight, 0, 0, 0, 1, 0, 0, 0, 0, 0, 0, 0);
  }

  private static short[] take(SimulatedCamera camera, long number, float scene) {
    float[] picture = new float[WIDTH * HEIGHT];
    java.util.Arrays.fill(picture, scene);
    short[] counts = new short[picture.length];
    camera.take(number, picture, counts);
    return counts;
  }

  @Test
  void countsAreHundredthsOfAKelvinAboveAbsoluteZero() {
    SimulatedCamera camera = new SimulatedCamera(settings(0, 0, 1), 1, 23);
    assertEquals(29615, take(camera, 0, 0)[0] & 0xFFFF);
    assertEquals(29715, take(camera, 1, 1)[5] & 0xFFFF);
  }

  @Test
  void noiseHasItsStandardDeviationAndNormalTails() {
    double[] values = new double[400_000];
    GaussianNoise noise = new GaussianNoise(7);
    java.util.Arrays.setAll(values, i -> noise.next());
    assertEquals(1, new StandardDeviation().evaluate(values), 0.005);
    assertEquals(0, new Kurtosis().evaluate(values), 0.03);
    double beyond = java.util.Arrays.stream(values).filter(v -> Math.abs(v) > 3).count();
    // Two-sided tail beyond 3 sigma 2.6998e-3, Abramowitz and Stegun, table 26.1; +- 5 sigma.
    assertEquals(2.6998e-3 * values.length, beyond, 5 * Math.sqrt(2.6998e-3 * values.length));
  }

  @Test
  void theSameSeedGivesTheSameNoiseWhateverTheFatesBefore() {
    SimulatedCamera first = new SimulatedCamera(settings(0.05, 0, 1), 9, 23);
    SimulatedCamera second = new SimulatedCamera(settings(0.05, 0, 1), 9, 23);
    for (int i = 0; i < 5; i++) {
      assertArrayEquals(take(first, i, 0.3f), take(second, i, 0.3f));
    }
    SimulatedCamera other = new SimulatedCamera(settings(0.05, 0, 1), 10, 23);
    assertNotEquals(take(first, 5, 0)[0], take(other, 5, 0)[0] + 1000);
  }

  @Test
  void theNoiseOfAPixelIsTheStatedOne() {
    SimulatedCamera camera = new SimulatedCamera(settings(0.05, 0, 1), 3, 23);
    StandardDeviation deviation = new StandardDeviation();
    for (int i = 0; i < 40; i++) {
      for (short count : take(camera, i, 0)) {
        deviation.increment((count & 0xFFFF) * 0.01);
      }
    }
    // 50 mK with the counts' own rounding, 10 mK / sqrt(12), added in squares.
    assertEquals(Math.hypot(0.050, 0.01 / Math.sqrt(12)), deviation.getResult(), 3e-4);
  }

  @Test
  void theDetectorFollowsAStepAsAFirstOrderBody() {
    SimulatedCamera camera = new SimulatedCamera(settings(0, 0.1, 1), 1, 0);
    take(camera, 0, 0);
    camera.see(0, even(10));
    // 1 - exp(-t/tau) with frames of 40 ms and tau = 100 ms.
    assertEquals(27315 + 1000 * (1 - Math.exp(-0.4)), take(camera, 1, 10)[0] & 0xFFFF, 1);
    assertEquals(27315 + 1000 * (1 - Math.exp(-0.8)), take(camera, 2, 10)[0] & 0xFFFF, 1);
  }

  @Test
  void ownSmoothingLowersTheNoiseAndCorrelatesFrames() {
    double weight = 0.113;
    SimulatedCamera camera = new SimulatedCamera(settings(0.2, 0, weight), 3, 23);
    int lag = 5;
    double[][] kept = new double[120][];
    for (int i = 0; i < 320; i++) {
      short[] counts = take(camera, i, 0);
      if (i >= 200) {
        kept[i - 200] = new double[counts.length];
        for (int p = 0; p < counts.length; p++) {
          kept[i - 200][p] = (counts[p] & 0xFFFF) * 0.01 - 296.15;
        }
      }
    }
    double square = 0;
    double product = 0;
    for (int i = lag; i < kept.length; i++) {
      for (int p = 0; p < kept[i].length; p++) {
        square += kept[i][p] * kept[i][p];
        product += kept[i][p] * kept[i - lag][p];
      }
    }
    // Exponential smoothing (Roberts 1959): variance w/(2-w), correlation (1-w)^lag.
    double variance = square / ((kept.length - lag) * (double) WIDTH * HEIGHT);
    assertEquals(0.2 * 0.2 * weight / (2 - weight), variance, 0.03 * variance);
    assertEquals(Math.pow(1 - weight, lag), product / square, 0.02);
  }

  @Test
  void aShutterEventStopsFramesAndLeavesANewPattern() {
    CameraSettings shutter =
        CameraSettings.decent().withSize(WIDTH, HEIGHT, 25).withShutterEverySeconds(2);
    SimulatedCamera camera = new SimulatedCamera(shutter.withNoiseKelvin(0), 1, 23);
    short[] before = null;
    int shut = 0;
    for (int i = 0; i < 75; i++) {
      shut += camera.fate(i) == FrameFate.SHUTTERED ? 1 : 0;
      short[] now = take(camera, i, 0);
      before = i == 49 ? now : before;
      if (i == 64) {
        int changed = 0;
        for (int p = 0; p < now.length; p++) {
          changed += Math.abs(now[p] - before[p]) > 3 ? 1 : 0;
        }
        assertTrue(changed > now.length / 2, changed + " pixels changed");
      }
    }
    assertEquals(13, shut, "half a second at 25 Hz, from frame 50 to 62");
  }

  @Test
  void fatesHaveTheirShares() {
    CameraSettings bad =
        new CameraSettings(
            8, 8, 25, 0, 0, 0, 0, 0, 0, 1, 0, 0, 0, 1, 0.04, 0.03, 0.10, 0.05, 0.02, 0, 0);
    SimulatedCamera camera = new SimulatedCamera(bad, 1, 23);
    int[] seen = new int[FrameFate.values().length];
    int frames = 20_000;
    for (int i = 0; i < frames; i++) {
      seen[camera.fate(i).ordinal()]++;
    }
    assertEquals(0.10, seen[FrameFate.LATE.ordinal()] / (double) frames, 0.01);
    assertEquals(0.05, seen[FrameFate.DROPPED.ordinal()] / (double) frames, 0.008);
    assertEquals(0.02, seen[FrameFate.REPEATED.ordinal()] / (double) frames, 0.005);
    assertEquals(0.07, camera.latencySeconds(FrameFate.LATE), 1e-12);
  }

  /** The steady state of a first-order body behind a ramp lags by its time constant exactly. */
  @Test
  void theDetectorSeesASteadyRiseLateByItsTimeConstantHoweverOftenItLooks() {
    double lag = 0.010;
    SimulatedCamera once = new SimulatedCamera(settings(0, lag, 1), 1, 20);
    SimulatedCamera often = new SimulatedCamera(settings(0, lag, 1), 1, 20);
    short[] counts = new short[WIDTH * HEIGHT];
    short[] others = new short[WIDTH * HEIGHT];
    for (int n = 0; n <= 50; n++) {
      once.take(n, even(10 * n / 25.0), counts);
      if (n > 0) {
        often.see((n - 0.3) / 25, even(10 * (n - 0.3) / 25));
      }
      often.take(n, even(10 * n / 25.0), others);
    }
    double expected = (20 + 273.15 + 10 * (50 / 25.0 - lag)) * 100;
    assertEquals(expected, counts[0] & 0xFFFF, 1);
    assertEquals(counts[0], others[0], 1);
  }

  private static float[] even(double kelvin) {
    float[] values = new float[WIDTH * HEIGHT];
    Arrays.fill(values, (float) kelvin);
    return values;
  }
}
