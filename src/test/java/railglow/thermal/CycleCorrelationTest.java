package railglow.thermal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class CycleCorrelationTest {
  private static final int CYCLES = 12;

  /** Planes of noise that carry a share of the one before, and a steady warm corner. */
  private static double scatterToMean(double carried) {
    SplittableRandom random = new SplittableRandom(3);
    CycleCorrelation correlation = new CycleCorrelation(96, 72);
    ChannelMoments moments = new ChannelMoments(96 * 72);
    float[] before = new float[96 * 72];
    for (int k = 0; k < CYCLES; k++) {
      float[] plane = new float[before.length];
      for (int i = 0; i < plane.length; i++) {
        float fresh = (float) random.nextGaussian();
        plane[i] = fresh + (float) carried * before[i] + (i < 2000 ? 50 : 0);
        before[i] = fresh;
      }
      moments.add(plane, plane);
      if (k == CYCLES - 1) {
        return correlation.scatterToMean(moments, plane);
      }
      correlation.add(plane);
    }
    return Double.NaN;
  }

  @Test
  void noiseCarriedIntoTheNextCycleWidensTheErrorOfTheMean() {
    // (1 + r)^2 against 1 + r^2, two ends of twelve cycles aside
    double correlation = 0.3 / (1 + 0.3 * 0.3);
    assertEquals(1 + 2 * correlation * 11 / 12, scatterToMean(0.3), 0.06);
  }

  @Test
  void cyclesOfTheirOwnNoiseAreLeftAlone() {
    assertEquals(1, scatterToMean(0));
    assertEquals(1, scatterToMean(-0.3));
  }

  /**
   * Pixels that scatter most are left out; chosen by scatter and successive differences together,
   * they took with them what speaks against a correlation, and 6 of 10 runs of four white cycles
   * were thought to carry noise.
   */
  @Test
  void aFewCyclesOfWhiteNoiseAreLeftAloneToo() {
    int widened = 0;
    for (int seed = 0; seed < 40; seed++) {
      widened +=
          scatterToMean(new NoiseScene(NoiseScene.Kind.WHITE, 64, 48, seed), 64, 48, 4) > 1 ? 1 : 0;
    }
    int often = widened;
    assertTrue(often <= 8, () -> often + " of 40 runs of four cycles");
  }

  /**
   * With weight 0.113 a frame and six frames a quarter neighbouring cycles correlate by 0.054 (from
   * the weights and the powers of 0.887, numpy 2.4); without the correction a steady error remains.
   */
  @Test
  void aCameraThatSmoothsOverAQuarterOfThePeriodIsSeenToDoSo() {
    NoiseScene scene = new NoiseScene(NoiseScene.Kind.SMOOTHED, 160, 120, 5);
    assertEquals(1 + 2 * 0.054 * 15 / 16, scatterToMean(scene, 160, 120, 16), 0.03);
  }

  private static double scatterToMean(NoiseScene scene, int width, int height, int count) {
    CycleCorrelation correlation = new CycleCorrelation(width, height);
    ChannelMoments moments = new ChannelMoments(width * height);
    double ratio = 1;
    for (int k = 0; k < count; k++) {
      QuarterMeans q = scene.next();
      float[] plane = new float[width * height];
      for (int i = 0; i < plane.length; i++) {
        plane[i] =
            (q.q2().values()[i] + q.q3().values()[i] - q.q1().values()[i] - q.q4().values()[i]) / 2;
      }
      moments.add(plane, plane);
      ratio = correlation.scatterToMean(moments, plane);
      correlation.add(plane);
    }
    return ratio;
  }
}
