package railglow.sim;

import java.util.SplittableRandom;

/** A round warm place in white noise, with patterns that stand still; frames in order. */
final class WarmedScene implements PhasedRun.Scene {
  static final int WIDTH = 48;
  static final int HEIGHT = 40;
  private static final double COLUMN = 24.3;
  private static final double ROW = 19.7;
  private static final double SIGMA_PIXELS = 2;
  private static final double COUNTS_PER_KELVIN = 100;
  private final WarmedBody body;
  private final double startSeconds;
  private final double riseKelvin;
  private final double noiseKelvin;
  private final SplittableRandom random;

  /**
   * @param startSeconds of the first cycle
   * @param riseKelvin settled
   */
  WarmedScene(
      WarmedBody body, double startSeconds, double riseKelvin, double noiseKelvin, long seed) {
    this.body = body;
    this.startSeconds = startSeconds;
    this.riseKelvin = riseKelvin;
    this.noiseKelvin = noiseKelvin;
    this.random = new SplittableRandom(seed);
  }

  @Override
  public void switched(boolean on, long nanos) {
    // the body follows its own pulses
  }

  @Override
  public void frameAt(long nanos, short[] counts) {
    double rise = riseKelvin * body.seenAt(nanos * 1e-9 - startSeconds);
    for (int i = 0; i < counts.length; i++) {
      double dx = i % WIDTH - COLUMN;
      double dy = i / WIDTH - ROW;
      double spot = rise * Math.exp(-(dx * dx + dy * dy) / (2 * SIGMA_PIXELS * SIGMA_PIXELS));
      double kelvin = spot + noiseKelvin * random.nextGaussian();
      counts[i] = (short) Math.round(29_500 + 7 * (i % 5) + COUNTS_PER_KELVIN * kelvin);
    }
  }
}
