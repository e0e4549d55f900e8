package railglow.thermal;

import java.util.ArrayList;
import java.util.List;
import railglow.thermal.GaussianFit.Window;

/**
 * The swing and the settled rise of a fitted source with all that is known to be uncertain of them:
 * noise, the shape, and of the rise the model in time ({@link SettledRise}).
 *
 * <p>Real heat is more pointed than a Gaussian, and its skirts lag: one shape for all of it says
 * too little of the middle. So the shape is fitted again to ever less of the image around its
 * middle, and the widest fit is taken that no closer one contradicts (Lepski, Theory Probab. Appl.
 * 35, 1990, p. 454). Where the image is a Gaussian that is the whole. Where it is none, nothing
 * tells how far the closest fit is off itself: as far again as it is from the last but one is in
 * the swing's interval. Not thread-safe.
 */
final class StatedRise {
  private static final int FITTED = 4;

  /** A closer fit sees so many of the last one's widths to either side. */
  private static final double CLOSER = 1.2;

  private static final int LEAST_REACH = 2;

  /** A difference of so many standard errors of the closer fit contradicts the wider one. */
  private static final double CONTRADICTS = 3;

  private final MeanPlanes planes;
  private final DetectionSettings settings;

  StatedRise(MeanPlanes planes, DetectionSettings settings) {
    this.planes = planes;
    this.settings = settings;
  }

  /**
   * What is said of the middle of a source.
   *
   * @param middle the fit that it rests on
   * @param inPhase amplitude
   * @param quadrature amplitude
   */
  record Stated(
      GaussianFit middle, double inPhase, double quadrature, Swing swing, SettledRise settled) {}

  /** A fit of the whole image or of its middle. */
  private record Fit(GaussianFit gaussian, Amplitudes amplitudes, double shapeVariance) {
    double sigma() {
      double size = amplitudes.size();
      return Math.sqrt(amplitudes.sizeVariance() + shapeVariance * size * size);
    }
  }

  /**
   * @param share of the amplitudes that selection left true
   * @param statistics of the filter by which it was found
   */
  Stated of(FoundSource found, double share, WidthStatistics statistics) {
    List<Fit> fits = everCloser(found, share, statistics);
    int chosen = widestUncontradicted(fits);
    Fit fit = fits.get(chosen);
    List<Amplitudes> closer = new ArrayList<>();
    List<SettledRise> closerRises = new ArrayList<>();
    for (Fit other : fits.subList(chosen + 1, fits.size())) {
      closer.add(other.amplitudes());
      closerRises.add(SettledRise.ofOneBody(other.amplitudes(), settings));
    }
    return new Stated(
        fit.gaussian(),
        fit.amplitudes().inPhase(),
        fit.amplitudes().quadrature(),
        Swing.of(
            fit.amplitudes(), fit.shapeVariance(), found.stop(), closer, mayGoOn(fits, chosen)),
        SettledRise.of(fit.amplitudes(), fit.shapeVariance(), settings).withShapes(closerRises));
  }

  /** Of the whole image and of ever less of it, as long as a shape settles. */
  private List<Fit> everCloser(FoundSource found, double share, WidthStatistics statistics) {
    double a = statistics.arc().weightI()[found.direction()];
    double b = statistics.arc().weightC()[found.direction()];
    List<Fit> fits = new ArrayList<>();
    fits.add(whole(found, share, statistics, a, b));
    GaussianFit last = found.fit();
    for (int reach = closerThan(last); reach >= LEAST_REACH; ) {
      Fit fit = middle(found, last, share, statistics.noise(), reach, a, b);
      if (fit != null) {
        fits.add(fit);
        last = fit.gaussian();
      }
      reach = Math.min(reach - 1, closerThan(last));
    }
    return fits;
  }

  private static int closerThan(GaussianFit last) {
    return (int) Math.ceil(CLOSER * last.sigma());
  }

  private static int widestUncontradicted(List<Fit> fits) {
    int chosen = 0;
    for (int k = 1; k < fits.size(); k++) {
      double off = fits.get(k).amplitudes().size() - fits.get(chosen).amplitudes().size();
      chosen = Math.abs(off) > CONTRADICTS * fits.get(k).sigma() ? k : chosen;
    }
    return chosen;
  }

  /** How far the size may be from where ever closer fits lead to. */
  private static double mayGoOn(List<Fit> fits, int chosen) {
    if (chosen == 0) {
      return 0;
    }
    double closest = fits.get(fits.size() - 1).amplitudes().size();
    double lastButOne = fits.get(fits.size() - 2).amplitudes().size();
    return closest + (closest - lastButOne) - fits.get(chosen).amplitudes().size();
  }

  private Fit whole(
      FoundSource found, double share, WidthStatistics statistics, double a, double b) {
    Candidate at = found.candidate();
    GaussianFit fit = found.fit();
    Window window = planes.window(at.column(), at.row(), statistics.sigma(), a, b, found.others());
    Amplitudes amplitudes =
        amplitudes(
            share * found.blob().inPhase(),
            share * found.blob().quadrature(),
            statistics.noise(),
            fit.energy());
    return new Fit(fit, amplitudes, shapeVariance(fit, window));
  }

  /** Of the pixels within reach of the last fit's middle; null where no shape settles. */
  private Fit middle(
      FoundSource found,
      GaussianFit last,
      double share,
      PooledNoise noise,
      int reach,
      double a,
      double b) {
    int column = (int) Math.round(last.column());
    int row = (int) Math.round(last.row());
    List<Blob> others = found.others();
    Window window = planes.windowWithin(column, row, reach, a, b, others);
    GaussianFit fit = GaussianFit.of(window, last.column(), last.row(), last.sigma());
    if (fit == null || !(fit.amplitude() > 0)) {
      return null;
    }
    Window inPhase = planes.windowWithin(column, row, reach, 1, 0, others);
    Window quadrature = planes.windowWithin(column, row, reach, 0, 1, others);
    double i = GaussianFit.bestAmplitude(inPhase, fit.column(), fit.row(), fit.sigma());
    double c = GaussianFit.bestAmplitude(quadrature, fit.column(), fit.row(), fit.sigma());
    return new Fit(
        fit, amplitudes(share * i, share * c, noise, fit.energy()), shapeVariance(fit, window));
  }

  private Amplitudes amplitudes(double i, double c, PooledNoise noise, double energy) {
    double perUnit = 1 / (planes.cycles() * energy);
    return new Amplitudes(
        i,
        c,
        noise.varianceI() * perUnit,
        noise.varianceC() * perUnit,
        noise.covariance() * perUnit);
  }

  /** The part of the amplitude's relative variance that comes of place and width. */
  private double shapeVariance(GaussianFit fit, Window window) {
    double square = fit.amplitude() * fit.amplitude();
    double more = Math.max(0, fit.covariance()[0][0] - 1 / fit.energy());
    return more / (planes.cycles() * square) * misfit(fit, window);
  }

  /**
   * How many times as far as noise alone the picture is from the fitted shape, squared; 1 where it
   * is no farther. What the fit leaves unexplained is taken for the size of its errors (Birge,
   * Phys. Rev. 40, 1932, p. 207).
   */
  private double misfit(GaussianFit fit, Window window) {
    int pixels = 0;
    for (boolean valid : window.valid()) {
      pixels += valid ? 1 : 0;
    }
    double reduced = planes.cycles() * fit.squaredMisfit(window) / Math.max(1, pixels - FITTED);
    return Math.max(1, reduced);
  }
}
