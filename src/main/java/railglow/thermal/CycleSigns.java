package railglow.thermal;

/**
 * Per pixel, in how many cycles the signal was positive along each of a few fixed directions of the
 * (I, C) plane. Mutable, not thread-safe.
 */
final class CycleSigns {
  private static final int DIRECTIONS = 6;
  private static final double ARC = Math.PI * 0.6;
  private final short[][] positive;
  private int cycles;

  CycleSigns(int pixels) {
    positive = new short[DIRECTIONS][pixels];
  }

  private CycleSigns(CycleSigns other) {
    positive = new short[DIRECTIONS][];
    for (int j = 0; j < DIRECTIONS; j++) {
      positive[j] = other.positive[j].clone();
    }
    cycles = other.cycles;
  }

  CycleSigns copy() {
    return new CycleSigns(this);
  }

  void add(float[] inPhase, float[] quadrature) {
    cycles++;
    for (int j = 0; j < DIRECTIONS; j++) {
      float a = (float) Math.cos(ARC * j / (DIRECTIONS - 1));
      float b = (float) Math.sin(ARC * j / (DIRECTIONS - 1));
      short[] counts = positive[j];
      for (int i = 0; i < counts.length; i++) {
        counts[i] += (short) (a * inPhase[i] + b * quadrature[i] > 0 ? 1 : 0);
      }
    }
  }

  /** Share of cycles with a positive signal along the direction next to an angle. */
  double share(int pixel, double angle) {
    if (cycles == 0) {
      return 0;
    }
    int j = (int) Math.round(angle / ARC * (DIRECTIONS - 1));
    return positive[Math.max(0, Math.min(DIRECTIONS - 1, j))][pixel] / (double) cycles;
  }
}
