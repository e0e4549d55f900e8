package railglow.thermal;

/**
 * How far the in-phase channel of one cycle resembles that of the next by noise alone, typical of
 * the picture: a camera that smooths over a quarter of the period carries noise across the border
 * of two cycles, and the scatter between cycles then understates the error of their mean. From half
 * the mean square of successive differences against the variance (von Neumann, Ann. Math. Stat. 12,
 * 1941, p. 367); a steady signal is in neither. On a lattice of the narrowest filter's output.
 * Mutable, not thread-safe.
 */
final class CycleCorrelation {
  /** Rows that are no multiple of this are not looked at. */
  static final int STRIDE = 3;

  private static final double KEPT = 0.9;

  /** Correlation within so many of its standard errors counts as none. */
  private static final double DOUBT = 2.5;

  /** Neighbours on the lattice are not quite independent. */
  private static final double INDEPENDENT = 0.7;

  private static final double MOST = 0.4;

  private final int[] lattice;
  private final float[] before;
  private final float[] halfSquares;
  private int cycles;

  CycleCorrelation(int width, int height) {
    int columns = (width + STRIDE - 1) / STRIDE;
    int rows = (height + STRIDE - 1) / STRIDE;
    lattice = new int[columns * rows];
    for (int k = 0; k < lattice.length; k++) {
      lattice[k] = k / columns * STRIDE * width + k % columns * STRIDE;
    }
    before = new float[lattice.length];
    halfSquares = new float[lattice.length];
  }

  void add(float[] inPhase) {
    for (int k = 0; k < lattice.length; k++) {
      float x = inPhase[lattice[k]];
      if (cycles > 0) {
        halfSquares[k] += (x - before[k]) * (x - before[k]) / 2;
      }
      before[k] = x;
    }
    cycles++;
  }

  /**
   * What the variance between cycles is to be multiplied with to give that of the mean times the
   * cycles; 1 where nothing speaks for more.
   *
   * @param moments with one cycle more than was added, on the lattice at least
   * @param last that cycle
   */
  double scatterToMean(ChannelMoments moments, float[] last) {
    int k = moments.cycles();
    if (k < 4 || cycles != k - 1) {
      return 1;
    }
    float[] variance = new float[lattice.length];
    for (int n = 0; n < lattice.length; n++) {
      variance[n] = moments.squaresI()[lattice[n]] / (k - 1);
    }
    // by the variance alone: under independent normal noise their ratio knows nothing of it (Basu,
    // Sankhya 15, 1955, p. 377), so that what is kept has no correlation of the choice's making
    int rank = (int) (KEPT * (variance.length - 1));
    float limit = Selection.kth(variance.clone(), variance.length, rank);
    double all = 0;
    double excess = 0;
    for (int n = 0; n < variance.length; n++) {
      if (variance[n] <= limit) {
        double d = last[lattice[n]] - before[n];
        all += variance[n];
        excess += variance[n] - (halfSquares[n] + d * d / 2) / (k - 1);
      }
    }
    double correlation = all > 0 ? excess / all / (1 - 2.0 / k) : 0;
    double error = 1 / Math.sqrt(INDEPENDENT * KEPT * lattice.length * k);
    return correlation > DOUBT * error ? 1 + 2 * Math.min(MOST, correlation) * (k - 1) / k : 1;
  }
}
