package railglow.thermal;

/**
 * Moments of one width along part of a row, in arrays that count from 0 and stay in the cache
 * (decision 0090). Where pixels are judged by the means alone the scatter is known only of those
 * that are asked for. Mutable, not thread-safe.
 */
final class RowMoments {
  private final ChannelMoments old;
  private final ChannelMoments now;
  private final float[] lastI;
  private final float[] lastC;
  private final float[] perDeviation;
  private float[] takenI;
  private float[] takenC;
  private float[] allPerDeviation;
  private WidthPlanes planes;
  private int start;
  private int length;

  RowMoments(int width) {
    old = new ChannelMoments(width);
    now = new ChannelMoments(width);
    lastI = new float[width];
    lastC = new float[width];
    perDeviation = new float[width];
  }

  /**
   * Of another width: what only matters until the row is tested is shared, so that all of it stays
   * in the nearest cache. What is asked for by pixel is not.
   */
  RowMoments(RowMoments other) {
    old = other.old;
    now = other.now;
    lastI = other.lastI;
    lastC = other.lastC;
    perDeviation = other.perDeviation;
  }

  /** Becomes those of so many pixels from one on. */
  void set(WidthPlanes widthPlanes, int from, int n, boolean withScatter) {
    planes = widthPlanes;
    start = from;
    length = n;
    old.copyRow(planes.settled(), from, n, withScatter);
    System.arraycopy(planes.lastI(), from, lastI, 0, n);
    System.arraycopy(planes.lastC(), from, lastC, 0, n);
    if (withScatter) {
      now.setTo(old, lastI, lastC, 0, n);
    } else {
      now.setMeansTo(old, lastI, lastC, 0, n);
    }
    takenI = null;
    takenC = null;
    allPerDeviation = null;
  }

  /** Takes these out of the means; they must stay as they are until the next row. */
  void takeOut(float[] inPhase, float[] quadrature) {
    takenI = inPhase;
    takenC = quadrature;
    now.subtractFromMeans(takenI, takenC, 0, length);
  }

  /**
   * Measures in units of a deviation of each pixel's own; nothing is taken out afterwards.
   *
   * @param all one over that deviation, for every pixel of the picture; null for 1
   */
  void evenOut(float[] all) {
    allPerDeviation = all;
    if (all != null) {
      System.arraycopy(all, start, perDeviation, 0, length);
      now.evenOut(perDeviation, 0, length);
    }
  }

  /** In arrays of the row, until the next. */
  ChannelMoments moments() {
    return now;
  }

  /** Those of a pixel, counted along the part of the row. */
  PixelMoments at(int x) {
    int i = start + x;
    return planes
        .settled()
        .with(
            i,
            planes.lastI()[i],
            planes.lastC()[i],
            takenI == null ? 0 : takenI[x],
            takenC == null ? 0 : takenC[x],
            allPerDeviation == null ? 1 : allPerDeviation[i]);
  }
}
