package railglow.thermal;

import java.util.Arrays;

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
  private final float[] takenI;
  private final float[] takenC;
  private final float[] perDeviation;
  private WidthPlanes planes;
  private int start;
  private int length;

  RowMoments(int width) {
    old = new ChannelMoments(width);
    now = new ChannelMoments(width);
    lastI = new float[width];
    lastC = new float[width];
    takenI = new float[width];
    takenC = new float[width];
    perDeviation = new float[width];
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
    Arrays.fill(takenI, 0, n, 0);
    Arrays.fill(takenC, 0, n, 0);
    Arrays.fill(perDeviation, 0, n, 1);
  }

  /** Takes these out of the means. */
  void takeOut(float[] inPhase, float[] quadrature) {
    System.arraycopy(inPhase, 0, takenI, 0, length);
    System.arraycopy(quadrature, 0, takenC, 0, length);
    now.subtractFromMeans(takenI, takenC, 0, length);
  }

  /**
   * Measures in units of a deviation of each pixel's own; nothing is taken out afterwards.
   *
   * @param all one over that deviation, for every pixel of the picture; null for 1
   */
  void evenOut(float[] all) {
    if (all != null) {
      System.arraycopy(all, start, perDeviation, 0, length);
      now.evenOut(perDeviation, 0, length);
    }
  }

  /** In the row's own arrays. */
  ChannelMoments moments() {
    return now;
  }

  /** Those of a pixel, counted along the part of the row. */
  PixelMoments at(int x) {
    return planes
        .settled()
        .with(start + x, lastI[x], lastC[x], takenI[x], takenC[x], perDeviation[x]);
  }
}
