package railglow.board.geometry;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.apache.commons.statistics.distribution.ChiSquaredDistribution;

/**
 * Chooses the map the points need: a homography, with one radial lens term only when the residuals
 * ask for it, and names points that do not agree with the others. Pure.
 *
 * @param registration the chosen map, of all points
 * @param notes what was found, one sentence each
 */
public record RegistrationChoice(Registration registration, List<String> notes) {
  /** Below this many points no single one can be told to be wrong. */
  private static final int OUTLIER_POINTS = 6;

  private static final int LENS_POINTS = 7;
  private static final double DOUBT_P = 0.01;
  private static final double LENS_P = 0.001;

  public RegistrationChoice {
    notes = List.copyOf(notes);
  }

  /**
   * @param pixelSigma how well each point was measured, px
   * @param pictureWidth px; NaN when not known, then no lens term is tried
   * @param pictureHeight likewise
   * @throws RegistrationException when the points can't tie a picture to a board at all
   */
  public static RegistrationChoice of(
      List<RegistrationPoint> points,
      double pixelSigma,
      double pictureWidth,
      double pictureHeight) {
    Registration plain = Registration.of(points, pixelSigma);
    List<String> notes = new ArrayList<>();
    if (!plain.residualsMeanSomething()) {
      notes.add(
          "four registration points fit exactly whatever their error; two more would show it");
      return new RegistrationChoice(plain, notes);
    }
    if (agrees(plain, pixelSigma)) {
      return new RegistrationChoice(plain, notes);
    }
    boolean lensTried = !Double.isNaN(pictureWidth) && points.size() >= LENS_POINTS;
    if (lensTried) {
      Registration lens =
          Registration.withLens(
              points, pixelSigma, (pictureWidth - 1) / 2, (pictureHeight - 1) / 2);
      double gained =
          (plain.sumOfSquaresPixels() - lens.sumOfSquaresPixels()) / (pixelSigma * pixelSigma);
      if (survival(gained, 1) < LENS_P && agrees(lens, pixelSigma)) {
        notes.add(
            String.format(
                Locale.ROOT,
                "the residuals ask for the lens: with one radial term they fall from %.2f to %.2f px"
                    + " rms",
                plain.rmsResidualPixels(),
                lens.rmsResidualPixels()));
        return new RegistrationChoice(lens, notes);
      }
    }
    String outlier = outlier(points, pixelSigma, plain);
    notes.add(
        outlier != null
            ? outlier
            : String.format(
                Locale.ROOT,
                "the registration points scatter by %.2f px rms, more than the %.2f px stated: their"
                    + " scatter is believed%s",
                plain.rmsResidualPixels(),
                pixelSigma,
                lensTried
                    ? ""
                    : "; with seven points and the picture's size the lens is tried too"));
    return new RegistrationChoice(plain, notes);
  }

  private static boolean agrees(Registration registration, double pixelSigma) {
    return survival(
            registration.sumOfSquaresPixels() / (pixelSigma * pixelSigma),
            registration.degreesOfFreedom())
        > DOUBT_P;
  }

  private static double survival(double chiSquared, int freedom) {
    return freedom <= 0
        ? 1
        : ChiSquaredDistribution.of(freedom).survivalProbability(Math.max(0, chiSquared));
  }

  /** The one point without which all others agree; null when there is none or more than one. */
  private static String outlier(
      List<RegistrationPoint> points, double pixelSigma, Registration all) {
    if (points.size() < OUTLIER_POINTS) {
      return null;
    }
    RegistrationPoint worst = null;
    Registration best = null;
    for (RegistrationPoint point : points) {
      List<RegistrationPoint> rest = new ArrayList<>(points);
      rest.remove(point);
      Registration without;
      try {
        without = Registration.of(rest, pixelSigma);
      } catch (RegistrationException e) {
        continue;
      }
      if (best == null || without.sumOfSquaresPixels() < best.sumOfSquaresPixels()) {
        best = without;
        worst = point;
      }
    }
    double gained =
        best == null
            ? 0
            : (all.sumOfSquaresPixels() - best.sumOfSquaresPixels()) / (pixelSigma * pixelSigma);
    if (best == null
        || !agrees(best, pixelSigma)
        || survival(gained, 2) * points.size() > DOUBT_P) {
      return null;
    }
    PixelPosition expected = best.toPixel(worst.xMillimetres(), worst.yMillimetres());
    return String.format(
        Locale.ROOT,
        "registration point %s lies %.1f px from where the others put it: measure it again, or leave"
            + " it out",
        worst.name(),
        Math.hypot(worst.column() - expected.column(), worst.row() - expected.row()));
  }
}
