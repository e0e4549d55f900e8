package railglow.thermal;

/**
 * Per pixel, in how many cycles the signal was positive along each of a few fixed directions of the
 * (I, C) plane. Mutable, not thread-safe.
 */
final class CycleSigns {
  private static final int DIRECTIONS = 6;
  private static final double ARC = Math.PI * 0.6;
  private final short[][] positive;
  private float[] lastI;
  private float[] lastC;
  private int cycles;
  private boolean hasLast;

  CycleSigns(int pixels) {
    positive = new short[DIRECTIONS][pixels];
  }

  /** Takes a cycle that is final. */
  void add(float[] inPhase, float[] quadrature) {
    cycles++;
    hasLast = false;
    for (int j = 0; j < DIRECTIONS; j++) {
      float a = weightI(j);
      float b = weightC(j);
      short[] counts = positive[j];
      for (int i = 0; i < counts.length; i++) {
        counts[i] += (short) (a * inPhase[i] + b * quadrature[i] > 0 ? 1 : 0);
      }
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
