package railglow.thermal;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

/** Quarter means of invented pictures: white noise and Gaussian sources of first order. */
public final class WhiteCycles {
  /** A source as the picture shows it. */
  public record Source(
      double column, double row, double sigmaPixels, double riseKelvin, double tauSeconds) {}

  private final int width;
  private final int height;
  private final double noiseKelvin;
  private final SplittableRandom random;
  private final List<float[][]> signals = new ArrayList<>();
  private int cycle;

  /**
   * @param noiseKelvin of one quarter mean
   */
  public WhiteCycles(int width, int height, double noiseKelvin, long seed) {
    this.width = width;
    this.height = height;
    this.noiseKelvin = noiseKelvin;
    this.random = new SplittableRandom(seed);
  }

  public WhiteCycles with(Source source, double cameraSeconds, double periodSeconds) {
    FirstOrderResponse g = FirstOrderResponse.of(source.tauSeconds(), cameraSeconds, periodSeconds);
    double i = g.inPhase() / 2;
    double c = g.quadrature() / 2;
    double[] shares = {0.5 - i - c, 0.5 + i - c, 0.5 + i + c, 0.5 - i + c};
    float[][] quarters = new float[4][width * height];
    for (int row = 0, p = 0; row < height; row++) {
      for (int x = 0; x < width; x++, p++) {
        double r2 = Math.pow(x - source.column(), 2) + Math.pow(row - source.row(), 2);
        double g2 = r2 / (2 * source.sigmaPixels() * source.sigmaPixels());
        double rise = g2 < 30 ? source.riseKelvin() * Math.exp(-g2) : 0;
        for (int q = 0; q < 4; q++) {
          quarters[q][p] = (float) (rise * shares[q]);
        }
      }
    }
    signals.add(quarters);
    return this;
  }

  public QuarterMeans next() {
    Plane[] planes = new Plane[4];
    for (int q = 0; q < 4; q++) {
      float[] values = new float[width * height];
      for (int p = 0; p < values.length; p++) {
        double sum = noiseKelvin * random.nextGaussian();
        for (float[][] signal : signals) {
          sum += signal[q][p];
        }
        values[p] = (float) sum;
      }
      planes[q] = new Plane(width, height, values);
    }
    return new QuarterMeans(
        cycle++, planes[0], planes[1], planes[2], planes[3], new int[] {12, 12, 12, 12});
  }
}
