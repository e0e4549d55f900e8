package railglow.thermal;

import java.util.SplittableRandom;

/**
 * A scene without any heat: pixel noise and one of several disturbances, reduced to quarters of six
 * frames. Thousands of runs are cheap, because what pixel noise adds to a quarter's sum is drawn at
 * once: the sum of six independent Gaussians is one Gaussian, and sum and last value of six steps
 * of a recursive filter, given the value before, are two.
 */
final class NoiseScene {
  /** What disturbs besides pixel noise. */
  enum Kind {
    /** White pixel noise. */
    WHITE,
    /** A wandering whole-frame offset, slopes that differ from pixel to pixel and bend. */
    DRIFT,
    /** Row and column noise that changes with every frame. */
    STRIPES,
    /** Recursive smoothing of the noise in time, weight 0.113 a frame. */
    SMOOTHED,
    /** Shutter events: a new fixed pattern of 3 sigma, a common step that fades. */
    SHUTTER,
    /** A bright spot that wanders without regard to the pulses. */
    REFLECTION,
    /** One pixel in a hundred with five times the noise. */
    FLICKER,
    /** One row and one column with an offset that changes with every frame, 4 sigma. */
    LINES,
    /** The same with a third of that. */
    FAINT_LINES,
    /** One row and one column whose pixels have noise of their own, 1.7 times the others'. */
    NOISY_LINES
  }

  private static final int FRAMES_PER_QUARTER = 6;
  private static final Smoothing SMOOTHING = Smoothing.of(1 - 0.113);
  private final Kind kind;
  private final int width;
  private final int height;
  private final SplittableRandom random;
  private final float[] pattern;
  private final float[] slope;
  private final float[] smoothed;
  private final boolean[] flickers;
  private final int badRow;
  private final int badColumn;
  private double common;
  private double commonFade;
  private double spotColumn;
  private double spotRow;
  private int frame;
  private int cycle;

  NoiseScene(Kind kind, int width, int height, long seed) {
    this.kind = kind;
    this.width = width;
    this.height = height;
    random = new SplittableRandom(seed);
    pattern = gaussians(3);
    slope = gaussians(0.002);
    smoothed = gaussians(1);
    flickers = new boolean[width * height];
    for (int i = 0; i < flickers.length; i++) {
      flickers[i] = random.nextInt(100) == 0;
    }
    spotColumn = width * random.nextDouble();
    spotRow = height * random.nextDouble();
    boolean hasBadLines = kind.compareTo(Kind.LINES) >= 0;
    badRow = hasBadLines ? random.nextInt(height) : -1;
    badColumn = hasBadLines ? random.nextInt(width) : -1;
  }

  private float[] gaussians(double deviation) {
    float[] values = new float[width * height];
    for (int i = 0; i < values.length; i++) {
      values[i] = (float) (deviation * random.nextGaussian());
    }
    return values;
  }

  /** The bad line's column; -1 where there is none. */
  int badColumn() {
    return badColumn;
  }

  QuarterMeans next() {
    Plane[] quarters = new Plane[4];
    for (int q = 0; q < 4; q++) {
      float[] sum = new float[width * height];
      addPixelNoise(sum);
      for (int f = 0; f < FRAMES_PER_QUARTER; f++) {
        addDisturbance(sum);
      }
      for (int i = 0; i < sum.length; i++) {
        sum[i] /= FRAMES_PER_QUARTER;
      }
      quarters[q] = new Plane(width, height, sum);
    }
    int[] counts = {FRAMES_PER_QUARTER, FRAMES_PER_QUARTER, FRAMES_PER_QUARTER, FRAMES_PER_QUARTER};
    return new QuarterMeans(cycle++, quarters[0], quarters[1], quarters[2], quarters[3], counts);
  }

  private void addPixelNoise(float[] sum) {
    double root = Math.sqrt(FRAMES_PER_QUARTER);
    for (int i = 0; i < sum.length; i++) {
      double noise = random.nextGaussian();
      if (kind == Kind.SMOOTHED) {
        sum[i] = (float) smoothedSum(i, noise, random.nextGaussian());
      } else {
        sum[i] = (float) (root * noise * times(i));
      }
    }
  }

  private double times(int i) {
    return switch (kind) {
      case FLICKER -> flickers[i] ? 5 : 1;
      case NOISY_LINES -> i / width == badRow || i % width == badColumn ? 5 / 3.0 : 1;
      default -> 1;
    };
  }

  /** The sum of the next values of a recursive filter of variance 1; advances to the last. */
  private double smoothedSum(int i, double one, double two) {
    double sum = SMOOTHING.sumPerStart() * smoothed[i] + SMOOTHING.sumDeviation() * one;
    double last = SMOOTHING.lastPerStart() * smoothed[i];
    smoothed[i] = (float) (last + SMOOTHING.lastPerOne() * one + SMOOTHING.lastDeviation() * two);
    return sum;
  }

  /** How sum and last of six steps x' = rho x + sqrt(1 - rho^2) noise depend on the start. */
  private record Smoothing(
      double sumPerStart,
      double sumDeviation,
      double lastPerStart,
      double lastPerOne,
      double lastDeviation) {
    static Smoothing of(double rho) {
      double kick = Math.sqrt(1 - rho * rho);
      double sumPerStart = 0;
      double sumVariance = 0;
      double lastVariance = 0;
      double covariance = 0;
      for (int f = 1; f <= FRAMES_PER_QUARTER; f++) {
        sumPerStart += Math.pow(rho, f);
        int left = FRAMES_PER_QUARTER - f;
        double toSum = kick * (1 - Math.pow(rho, left + 1)) / (1 - rho);
        double toLast = kick * Math.pow(rho, left);
        sumVariance += toSum * toSum;
        lastVariance += toLast * toLast;
        covariance += toSum * toLast;
      }
      double perOne = covariance / Math.sqrt(sumVariance);
      return new Smoothing(
          sumPerStart,
          Math.sqrt(sumVariance),
          Math.pow(rho, FRAMES_PER_QUARTER),
          perOne,
          Math.sqrt(lastVariance - perOne * perOne));
    }
  }

  private void addDisturbance(float[] sum) {
    disturb();
    frame++;
    if (kind == Kind.WHITE || kind == Kind.SMOOTHED || kind == Kind.FLICKER) {
      return;
    }
    double[] rows = stripes(height, badRow);
    double[] columns = stripes(width, badColumn);
    for (int y = 0, i = 0; y < height; y++) {
      for (int x = 0; x < width; x++, i++) {
        sum[i] += (float) (rows[y] + columns[x] + common + commonFade + extra(x, y, i));
      }
    }
  }

  private void disturb() {
    if (kind == Kind.DRIFT) {
      common += 0.1 * random.nextGaussian();
    } else if (kind == Kind.SHUTTER) {
      commonFade *= 0.97;
      if (random.nextInt(150) == 0) {
        commonFade += 10 * random.nextGaussian();
        float[] fresh = gaussians(3);
        System.arraycopy(fresh, 0, pattern, 0, fresh.length);
      }
    } else if (kind == Kind.REFLECTION) {
      spotColumn += 0.4 * random.nextGaussian();
      spotRow += 0.4 * random.nextGaussian();
      if (random.nextInt(60) == 0) {
        spotColumn = width * random.nextDouble();
        spotRow = height * random.nextDouble();
      }
    }
  }

  private double[] stripes(int n, int bad) {
    double[] stripes = new double[n];
    if (bad >= 0 && kind != Kind.NOISY_LINES) {
      stripes[bad] = (kind == Kind.LINES ? 4 : 4 / 3.0) * random.nextGaussian();
    }
    for (int k = 0; kind == Kind.STRIPES && k < n; k++) {
      stripes[k] = 0.5 * random.nextGaussian();
    }
    return stripes;
  }

  private double extra(int x, int y, int i) {
    return switch (kind) {
      case DRIFT -> slope[i] * (frame - 1) * (1 + 0.001 * (frame - 1));
      case SHUTTER -> pattern[i];
      case REFLECTION -> {
        double r2 = (x - spotColumn) * (x - spotColumn) + (y - spotRow) * (y - spotRow);
        yield r2 < 200 ? 6 * Math.exp(-r2 / 18) : 0;
      }
      default -> 0;
    };
  }
}
