package railglow.thermal;

import java.util.SplittableRandom;

/**
 * Frames of a scene without any heat: pixel noise and one of several disturbances, frame by frame,
 * reduced to quarters. Small pictures, few frames per quarter, so that thousands of runs are cheap.
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
    FLICKER
  }

  private static final int FRAMES_PER_QUARTER = 6;
  private final Kind kind;
  private final int width;
  private final int height;
  private final SplittableRandom random;
  private final float[] pattern;
  private final float[] slope;
  private final float[] smoothed;
  private final boolean[] flickers;
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
  }

  private float[] gaussians(double deviation) {
    float[] values = new float[width * height];
    for (int i = 0; i < values.length; i++) {
      values[i] = (float) (deviation * random.nextGaussian());
    }
    return values;
  }

  QuarterMeans next() {
    Plane[] quarters = new Plane[4];
    for (int q = 0; q < 4; q++) {
      float[] sum = new float[width * height];
      for (int f = 0; f < FRAMES_PER_QUARTER; f++) {
        addFrame(sum);
      }
      for (int i = 0; i < sum.length; i++) {
        sum[i] /= FRAMES_PER_QUARTER;
      }
      quarters[q] = new Plane(width, height, sum);
    }
    int[] counts = {FRAMES_PER_QUARTER, FRAMES_PER_QUARTER, FRAMES_PER_QUARTER, FRAMES_PER_QUARTER};
    return new QuarterMeans(cycle++, quarters[0], quarters[1], quarters[2], quarters[3], counts);
  }

  private void addFrame(float[] sum) {
    disturb();
    double[] rows = stripes(height);
    double[] columns = stripes(width);
    for (int y = 0, i = 0; y < height; y++) {
      for (int x = 0; x < width; x++, i++) {
        double noise = random.nextGaussian();
        if (kind == Kind.SMOOTHED) {
          double rho = 1 - 0.113;
          smoothed[i] = (float) (rho * smoothed[i] + Math.sqrt(1 - rho * rho) * noise);
          noise = smoothed[i];
        } else if (kind == Kind.FLICKER && flickers[i]) {
          noise *= 5;
        }
        sum[i] += (float) (noise + rows[y] + columns[x] + common + commonFade + extra(x, y, i));
      }
    }
    frame++;
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

  private double[] stripes(int n) {
    double[] stripes = new double[n];
    for (int k = 0; kind == Kind.STRIPES && k < n; k++) {
      stripes[k] = 0.5 * random.nextGaussian();
    }
    return stripes;
  }

  private double extra(int x, int y, int i) {
    return switch (kind) {
      case DRIFT -> slope[i] * frame * (1 + 0.001 * frame);
      case SHUTTER -> pattern[i];
      case REFLECTION -> {
        double r2 = (x - spotColumn) * (x - spotColumn) + (y - spotRow) * (y - spotRow);
        yield r2 < 200 ? 6 * Math.exp(-r2 / 18) : 0;
      }
      default -> 0;
    };
  }
}
