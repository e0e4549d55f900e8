package railglow.thermal;

import java.util.List;

/**
 * Tells a source from the flank of a stronger one beside it: by a dip between the two, or by
 * standing out of the ring around the stronger. Not thread-safe.
 */
final class BesideStronger {
  /** A dip is looked for in averages no wider than this across the line. */
  private static final double WIDEST_PROFILE = 3;

  /** A dip of less is noise. */
  private static final double DIP_SIGMAS = 3;

  /** Places on a ring around a stronger source. */
  private static final int RING = 16;

  private static final double RING_SMOOTHING = 1.5;

  private final MeanPlanes planes;
  private final WidthStatistics[] statistics;

  BesideStronger(MeanPlanes planes, WidthStatistics[] statistics) {
    this.planes = planes;
    this.statistics = statistics;
  }

  /** Whether a source is more than the flank of a stronger one. */
  boolean isApart(FoundSource source, Blob stronger) {
    return dipBetween(source, stronger) || sticksOutOfRing(source, stronger);
  }

  /** Noise of the difference of two smoothed values, in whitened units. */
  private double noiseOf(double sigma) {
    return Math.sqrt(2 / (planes.cycles() * Math.PI)) / sigma;
  }

  /**
   * Whether the picture dips between a source and a stronger one by more than noise: the flank of a
   * single source, whatever its profile, does not.
   */
  private boolean dipBetween(FoundSource source, Blob stronger) {
    Blob blob = source.blob();
    WidthStatistics s = statistics[source.candidate().widthIndex()];
    double a = s.arc().weightI()[source.direction()];
    double b = s.arc().weightC()[source.direction()];
    double dx = stronger.column() - blob.column();
    double dy = stronger.row() - blob.row();
    int middleColumn = (int) Math.round(blob.column() + dx / 2);
    int middleRow = (int) Math.round(blob.row() + dy / 2);
    double across = Math.min(blob.sigma(), WIDEST_PROFILE);
    int reach = (int) Math.ceil(Math.hypot(dx, dy) / 2 + 2.5 * across);
    LineProfile line =
        new LineProfile(
            planes.windowWithin(middleColumn, middleRow, reach, a, b, List.of()),
            blob.column(),
            blob.row(),
            stronger.column(),
            stronger.row(),
            across);
    double noise = line.noiseOfDifference(1 / Math.sqrt(planes.cycles()));
    double here = line.at(0);
    int steps = (int) Math.ceil(2 * Math.hypot(dx, dy));
    for (int k = 1; k < steps; k++) {
      if (here - line.at((double) k / steps) > DIP_SIGMAS * noise) {
        return true;
      }
    }
    return false;
  }

  /**
   * Whether a source stands out of the ring around a stronger one: the flank of a single source is
   * about as high all around it.
   */
  private boolean sticksOutOfRing(FoundSource source, Blob stronger) {
    Blob blob = source.blob();
    WidthStatistics s = statistics[source.candidate().widthIndex()];
    double a = s.arc().weightI()[source.direction()];
    double b = s.arc().weightC()[source.direction()];
    double dx = blob.column() - stronger.column();
    double dy = blob.row() - stronger.row();
    float[] around = new float[RING];
    int n = 0;
    for (int k = 2; k <= RING - 2; k++) {
      double angle = 2 * Math.PI * k / RING;
      double x = stronger.column() + dx * Math.cos(angle) - dy * Math.sin(angle);
      double y = stronger.row() + dx * Math.sin(angle) + dy * Math.cos(angle);
      if (planes.isInside(x, y)) {
        around[n++] = (float) planes.smoothed(x, y, RING_SMOOTHING, a, b, List.of());
      }
    }
    double here = planes.smoothed(blob.column(), blob.row(), RING_SMOOTHING, a, b, List.of());
    double typical = n == 0 ? here : Math.max(0, Selection.median(around, n));
    return here > 3 * typical && here - typical > 5 * noiseOf(RING_SMOOTHING);
  }
}
