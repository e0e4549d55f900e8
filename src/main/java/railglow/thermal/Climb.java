package railglow.thermal;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * From the pixel that is surest to the one that is warmest. How sure a pixel is depends on how
 * alike its own few cycles happen to be, so on a strong source the surest pixel may be anywhere on
 * its flank; the source is where signal over typical noise is largest. Uphill in steps of a pixel
 * and a width. Not thread-safe.
 */
final class Climb {
  /** Farther than so many sigmas of the widest filter on the way is another hill. */
  private static final double FARTHEST_SIGMAS = 6;

  private final MeanPlanes planes;
  private final WidthStatistics[] statistics;
  private final Map<Candidate, Double> known = new HashMap<>();
  private final PixelShape[] shapes;

  Climb(MeanPlanes planes, WidthStatistics[] statistics) {
    this.planes = planes;
    this.statistics = statistics;
    shapes = new PixelShape[statistics.length];
  }

  /** The top of the hill that a candidate is on, with the candidate's score. */
  Candidate from(Candidate start, List<Blob> others) {
    known.clear();
    Candidate here = start;
    double widest = statistics[start.widthIndex()].sigma();
    double height = height(here, others);
    while (true) {
      Candidate best = null;
      for (Candidate next : around(here)) {
        double there = height(next, others);
        if (there > height) {
          height = there;
          best = next;
        }
      }
      if (best == null) {
        return here;
      }
      double far = Math.hypot(best.column() - start.column(), best.row() - start.row());
      widest = Math.max(widest, statistics[best.widthIndex()].sigma());
      if (far > FARTHEST_SIGMAS * widest) {
        return start;
      }
      here = best;
    }
  }

  private List<Candidate> around(Candidate at) {
    List<Candidate> places = new ArrayList<>();
    for (int w = -1; w <= 1; w += 2) {
      int index = at.widthIndex() + w;
      if (index >= 0 && index < statistics.length && statistics[index] != null) {
        places.add(new Candidate(at.column(), at.row(), at.score(), index));
      }
    }
    for (int side = 0; side < 9; side++) {
      int x = at.column() + side % 3 - 1;
      int y = at.row() + side / 3 - 1;
      if (side != 4 && planes.isInside(x, y)) {
        places.add(new Candidate(x, y, at.score(), at.widthIndex()));
      }
    }
    return places;
  }

  private double height(Candidate at, List<Blob> others) {
    return known.computeIfAbsent(at, place -> measured(place, others));
  }

  private PixelShape shape(int widthIndex) {
    if (shapes[widthIndex] == null) {
      shapes[widthIndex] = MeanPlanes.shape(statistics[widthIndex].sigma());
    }
    return shapes[widthIndex];
  }

  /** Signal over typical noise along the best direction, per root of a cycle. */
  private double measured(Candidate at, List<Blob> others) {
    WidthStatistics s = statistics[at.widthIndex()];
    MeanPlanes.Smoothed both =
        planes.smoothedAt(at.column(), at.row(), shape(at.widthIndex()), others);
    double most = Double.NEGATIVE_INFINITY;
    for (int j = 0; j < s.arc().directions(); j++) {
      double along =
          s.arc().weightI()[j] * both.inPhase() + s.arc().weightC()[j] * both.quadrature();
      most = Math.max(most, along);
    }
    return most * Math.sqrt(both.energy());
  }
}
