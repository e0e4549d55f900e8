package railglow.thermal;

/**
 * Per pixel, in how many cycles the signal was positive along each of a few fixed directions of the
 * (I, C) plane. Mutable, not thread-safe.
 */
final class CycleSigns {
  private static final int DIRECTIONS = 6;
  private static final double ARC = Math.PI * 0.6;

  /** Pixels at a time: what the loops share stays in the cache. */
  private static final int TILE = 1024;

  /** The least positive number times this, twice, is more than 1. */
  private static final float STEEP = 0x1p100f;

  private final float[][] positive;
  private float[] lastI;
  private float[] lastC;
  private int cycles;
  private boolean hasLast;

  CycleSigns(int pixels) {
    positive = new float[DIRECTIONS][pixels];
  }

  /** Takes a cycle that is final. */
  void add(float[] inPhase, float[] quadrature) {
    cycles++;
    hasLast = false;
    float[] a = new float[DIRECTIONS];
    float[] b = new float[DIRECTIONS];
    for (int j = 0; j < DIRECTIONS; j++) {
      a[j] = weightI(j);
      b[j] = weightC(j);
    }
    for (int from = 0; from < inPhase.length; from += TILE) {
      int to = Math.min(inPhase.length, from + TILE);
      for (int j = 0; j < DIRECTIONS; j++) {
        count(positive[j], inPhase, quadrature, a[j], b[j], from, to);
      }
    }
  }

  /** Adds 1 where the sum is positive, without a branch: a loop with one is no vector code. */
  private static void count(
      float[] counts, float[] x, float[] y, float a, float b, int from, int to) {
    for (int i = from; i < to; i++) {
      counts[i] += Math.min(1, Math.max(0, (a * x[i] + b * y[i]) * STEEP * STEEP));
    }
  }

  /** Sets what the cycle after those taken looks like so far; kept, not copied. */
  void setLast(float[] inPhase, float[] quadrature) {
    lastI = inPhase;
    lastC = quadrature;
    hasLast = true;
  }

  private static float weightI(int direction) {
    return (float) Math.cos(ARC * direction / (DIRECTIONS - 1));
  }

  private static float weightC(int direction) {
    return (float) Math.sin(ARC * direction / (DIRECTIONS - 1));
  }

  /** Share of cycles with a positive signal along the direction next to an angle. */
  double share(int pixel, double angle) {
    int all = cycles + (hasLast ? 1 : 0);
    if (all == 0) {
      return 0;
    }
    int nearest = (int) Math.round(angle / ARC * (DIRECTIONS - 1));
    int j = Math.max(0, Math.min(DIRECTIONS - 1, nearest));
    boolean alsoLast = hasLast && weightI(j) * lastI[pixel] + weightC(j) * lastC[pixel] > 0;
    return (positive[j][pixel] + (alsoLast ? 1 : 0)) / (double) all;
  }
}
