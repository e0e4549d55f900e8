package railglow.board.geometry;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import railglow.thermal.Plane;

/**
 * Ties the picture of a camera that was moved to the board again, by what both thermal pictures
 * show: patches with enough texture are found again in the new picture by their correlation, and
 * the places they have moved to are the new registration's points. Pure.
 *
 * @param registration of the new picture
 * @param movedPixels mean distance the patches have moved
 * @param patches how many agree
 * @param residualPixels root mean square of what is left over, px
 */
public record MovedCamera(
    Registration registration, double movedPixels, int patches, double residualPixels) {
  private static final int HALF = 12;
  private static final int LEAST_PATCHES = 6;
  private static final double GOOD_CORRELATION = 0.8;
  private static final double MOST_RESIDUAL = 1.0;
  private static final double OUTLIER_PIXELS = 1.5;

  /** How well a patch is found again; used when the residuals say no worse. */
  private static final double PATCH_SIGMA = 0.2;

  /**
   * @param before mean picture the old registration belongs to
   * @param after mean picture of the same size, camera moved
   * @param noise of one pixel of either picture, in its unit
   * @param reachPixels how far it may have moved
   * @throws RegistrationException with the reason where the texture does not allow it
   */
  public static MovedCamera of(
      Registration old, Plane before, Plane after, double noise, int reachPixels) {
    if (before.width() != after.width() || before.height() != after.height()) {
      throw new RegistrationException("the two pictures are of different sizes");
    }
    List<RegistrationPoint> found = new ArrayList<>();
    int textured = 0;
    for (int row = HALF; row < before.height() - HALF; row += HALF) {
      for (int column = HALF; column < before.width() - HALF; column += HALF) {
        Patch patch = Patch.of(before, column, row);
        if (patch.spread() < 3 * noise) {
          continue;
        }
        textured++;
        double[] at = patch.found(after, reachPixels);
        if (at != null) {
          BoardPosition board = old.toBoard(column, row);
          found.add(
              new RegistrationPoint(
                  "patch " + column + "," + row,
                  board.xMillimetres(),
                  board.yMillimetres(),
                  at[0],
                  at[1]));
        }
      }
    }
    List<RegistrationPoint> agreeing = agreeing(found, old);
    if (agreeing.size() < LEAST_PATCHES) {
      throw new RegistrationException(
          String.format(
              Locale.ROOT,
              "only %d places of the thermal picture were found again and agree, of %d with texture;"
                  + " %d are needed: measure the registration points again",
              agreeing.size(),
              textured,
              LEAST_PATCHES));
    }
    Registration registration = Registration.of(agreeing, PATCH_SIGMA);
    if (registration.rmsResidualPixels() > MOST_RESIDUAL) {
      throw new RegistrationException(
          String.format(
              Locale.ROOT,
              "the places found again do not fit one camera position (%.1f px rms, at most %.1f px):"
                  + " measure the registration points again",
              registration.rmsResidualPixels(),
              MOST_RESIDUAL));
    }
    double moved = 0;
    for (RegistrationPoint point : agreeing) {
      PixelPosition was = old.toPixel(point.xMillimetres(), point.yMillimetres());
      moved += Math.hypot(point.column() - was.column(), point.row() - was.row());
    }
    return new MovedCamera(
        registration, moved / agreeing.size(), agreeing.size(), registration.rmsResidualPixels());
  }

  /** Leaves out patches that were found where the others do not put them, the worst first. */
  private static List<RegistrationPoint> agreeing(List<RegistrationPoint> found, Registration old) {
    List<RegistrationPoint> rest = nearMedian(found, old);
    while (rest.size() >= LEAST_PATCHES) {
      List<Double> residuals = Registration.of(rest, PATCH_SIGMA).residualsPixels();
      int worst = 0;
      for (int i = 1; i < residuals.size(); i++) {
        worst = residuals.get(i) > residuals.get(worst) ? i : worst;
      }
      if (residuals.get(worst) <= OUTLIER_PIXELS) {
        return rest;
      }
      rest.remove(worst);
    }
    return rest;
  }

  /** A camera that turned a little moves places differently, but none far from the median move. */
  private static List<RegistrationPoint> nearMedian(
      List<RegistrationPoint> found, Registration old) {
    double[] columns = new double[found.size()];
    double[] rows = new double[found.size()];
    for (int i = 0; i < found.size(); i++) {
      PixelPosition was = old.toPixel(found.get(i).xMillimetres(), found.get(i).yMillimetres());
      columns[i] = found.get(i).column() - was.column();
      rows[i] = found.get(i).row() - was.row();
    }
    double column = median(columns);
    double row = median(rows);
    List<RegistrationPoint> near = new ArrayList<>();
    for (int i = 0; i < found.size(); i++) {
      if (Math.hypot(columns[i] - column, rows[i] - row) < HALF / 2.0) {
        near.add(found.get(i));
      }
    }
    return near;
  }

  private static double median(double[] values) {
    double[] sorted = values.clone();
    java.util.Arrays.sort(sorted);
    return sorted.length == 0 ? 0 : sorted[sorted.length / 2];
  }

  /** A square of the old picture, mean taken off. */
  private record Patch(int column, int row, double[] values, double spread) {
    static Patch of(Plane plane, int column, int row) {
      double[] values = cut(plane, column, row);
      double squares = 0;
      for (double value : values) {
        squares += value * value;
      }
      return new Patch(column, row, values, Math.sqrt(squares / values.length));
    }

    private static double[] cut(Plane plane, int column, int row) {
      int side = 2 * HALF + 1;
      double[] values = new double[side * side];
      double mean = 0;
      int i = 0;
      for (int r = row - HALF; r <= row + HALF; r++) {
        for (int c = column - HALF; c <= column + HALF; c++) {
          values[i] = plane.at(Math.min(c, plane.width() - 1), Math.min(r, plane.height() - 1));
          mean += values[i++];
        }
      }
      mean /= values.length;
      for (int k = 0; k < values.length; k++) {
        values[k] -= mean;
      }
      return values;
    }

    /** Where it is in another picture, between pixels; null when it is not surely there. */
    double[] found(Plane after, int reach) {
      int size = 2 * reach + 1;
      double[] correlation = new double[size * size];
      java.util.Arrays.fill(correlation, Double.NEGATIVE_INFINITY);
      int best = -1;
      for (int dr = -reach; dr <= reach; dr++) {
        for (int dc = -reach; dc <= reach; dc++) {
          int c = column + dc;
          int r = row + dr;
          if (c < HALF || r < HALF || c >= after.width() - HALF || r >= after.height() - HALF) {
            continue;
          }
          int at = (dr + reach) * size + dc + reach;
          correlation[at] = correlation(cut(after, c, r));
          best = best < 0 || correlation[at] > correlation[best] ? at : best;
        }
      }
      int dc = best % size;
      int dr = best / size;
      boolean inside = best >= 0 && dc > 0 && dr > 0 && dc < size - 1 && dr < size - 1;
      if (!inside || correlation[best] < GOOD_CORRELATION) {
        return null;
      }
      double right = top(correlation[best - 1], correlation[best], correlation[best + 1]);
      double down = top(correlation[best - size], correlation[best], correlation[best + size]);
      return Double.isFinite(right) && Double.isFinite(down)
          ? new double[] {column + dc - reach + right, row + dr - reach + down}
          : null;
    }

    private double correlation(double[] other) {
      double dot = 0;
      double own = 0;
      double theirs = 0;
      for (int i = 0; i < values.length; i++) {
        dot += values[i] * other[i];
        own += values[i] * values[i];
        theirs += other[i] * other[i];
      }
      return dot / Math.sqrt(Math.max(1e-30, own * theirs));
    }

    /** Top of the parabola through three values, from the middle one. */
    private static double top(double before, double middle, double after) {
      double bend = before - 2 * middle + after;
      return bend < 0 ? 0.5 * (before - after) / bend : Double.NaN;
    }
  }
}
