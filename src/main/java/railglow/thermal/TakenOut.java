package railglow.thermal;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * What is taken out of the means of one look, as each width's filter shows it. Lines and blobs are
 * products of a profile across and one down the picture; so is what a separable filter makes of
 * them, and no plane is filtered. Only pixels without data, where a line is not, need that. Not
 * thread-safe.
 */
final class TakenOut {
  private final WidthPlanes[] widths;
  private final CommonParts.Removed removedI;
  private final CommonParts.Removed removedC;
  private final OfWidth[] ofWidth;
  private final float[] across;
  private Holes holes;

  TakenOut(
      int width, WidthPlanes[] widths, CommonParts.Removed removedI, CommonParts.Removed removedC) {
    this.widths = widths;
    this.removedI = removedI;
    this.removedC = removedC;
    ofWidth = new OfWidth[widths.length];
    for (int w = 0; w < widths.length; w++) {
      MatchedFilter filter = widths[w].filter();
      ofWidth[w] =
          new OfWidth(
              new ArrayList<>(),
              filter.evening(removedI),
              filter.evening(removedC),
              new float[width],
              new float[width]);
    }
    across = new float[width];
  }

  /**
   * A product of profiles, filtered.
   *
   * @param inPhase amplitude
   * @param quadrature amplitude
   */
  private record Product(float[] across, float[] down, float inPhase, float quadrature) {}

  /**
   * @param rowI what is taken out along the row asked for last
   * @param rowC likewise
   */
  private record OfWidth(
      List<Product> products,
      MatchedFilter.Evening eveningI,
      MatchedFilter.Evening eveningC,
      float[] rowI,
      float[] rowC) {}

  /**
   * What the products have too much at pixels without data.
   *
   * @param filteredI per width, where it was prepared
   */
  private record Holes(
      float[] inPhase, float[] quadrature, float[][] filteredI, float[][] filteredC) {}

  /**
   * Takes out what lines have.
   *
   * @param mask 1 for valid and 0 for invalid pixels, or null for all valid
   */
  void lines(LineResidue inPhase, LineResidue quadrature, float[] mask) {
    double[] acrossAll = ones(inPhase.columns().length);
    double[] downAll = ones(inPhase.rows().length);
    add(acrossAll, inPhase.rows(), 1, 0);
    add(acrossAll, quadrature.rows(), 0, 1);
    // where noise explains all that columns have, which is often, nothing of them is taken out
    if (!isNothing(inPhase.columns())) {
      add(inPhase.columns(), downAll, 1, 0);
    }
    if (!isNothing(quadrature.columns())) {
      add(quadrature.columns(), downAll, 0, 1);
    }
    if (mask != null) {
      holes =
          new Holes(
              inPhase.atHoles(mask),
              quadrature.atHoles(mask),
              new float[widths.length][mask.length],
              new float[widths.length][mask.length]);
    }
  }

  private static boolean isNothing(double[] profile) {
    return Arrays.stream(profile).allMatch(part -> part == 0);
  }

  private static double[] ones(int n) {
    double[] ones = new double[n];
    Arrays.fill(ones, 1);
    return ones;
  }

  void blob(Blob blob, int width, int height) {
    Area area = blob.area(width, height);
    add(
        blob.profile(blob.column(), area.left(), area.right(), width),
        blob.profile(blob.row(), area.top(), area.bottom(), height),
        (float) blob.inPhase(),
        (float) blob.quadrature());
  }

  private void add(double[] profileAcross, double[] profileDown, float inPhase, float quadrature) {
    for (int w = 0; w < widths.length; w++) {
      MatchedFilter filter = widths[w].filter();
      ofWidth[w].products.add(
          new Product(filter.along(profileAcross), filter.along(profileDown), inPhase, quadrature));
    }
  }

  /** To be called before rows of a width in an area are asked for. */
  void prepare(int w, Area area) {
    if (holes != null) {
      MatchedFilter filter = widths[w].filter();
      filter.apply(holes.inPhase, holes.filteredI[w], removedI, area);
      filter.apply(holes.quadrature, holes.filteredC[w], removedC, area);
    }
  }

  /** Takes it out of the moments of a width along a row of an area. */
  void takeOutOf(RowMoments moments, int w, int row, Area area) {
    int left = area.left();
    int n = area.columns();
    OfWidth here = ofWidth[w];
    float[] rowI = here.rowI;
    float[] rowC = here.rowC;
    Arrays.fill(rowI, 0, n, 0);
    Arrays.fill(rowC, 0, n, 0);
    for (Product product : here.products) {
      float down = product.down[row];
      if (down != 0) {
        float[] profile = from(left, product.across, n);
        if (product.inPhase != 0) {
          addTimes(rowI, profile, product.inPhase * down, n);
        }
        if (product.quadrature != 0) {
          addTimes(rowC, profile, product.quadrature * down, n);
        }
      }
    }
    MatchedFilter filter = widths[w].filter();
    filter.normalise(rowI, row, left, n, here.eveningI);
    filter.normalise(rowC, row, left, n, here.eveningC);
    if (holes != null) {
      int start = row * across.length + left;
      for (int x = 0; x < n; x++) {
        rowI[x] -= holes.filteredI[w][start + x];
        rowC[x] -= holes.filteredC[w][start + x];
      }
    }
    moments.takeOut(rowI, rowC);
  }

  /** So that sum and profile are indexed by the same variable. */
  private float[] from(int left, float[] profile, int n) {
    if (left == 0) {
      return profile;
    }
    System.arraycopy(profile, left, across, 0, n);
    return across;
  }

  private static void addTimes(float[] sum, float[] values, float factor, int n) {
    for (int x = 0; x < n; x++) {
      sum[x] += factor * values[x];
    }
  }
}
