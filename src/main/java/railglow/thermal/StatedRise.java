package railglow.thermal;

import java.util.ArrayList;
import java.util.List;
import railglow.thermal.GaussianFit.Window;
import railglow.units.Interval;

/**
 * The swing and the settled rise of a fitted source with all that is known to be uncertain of them:
 * noise, the shape, and of the rise the model in time ({@link SettledRise}).
 *
 * <p>Real heat is more pointed than a Gaussian, and its skirts lag: one shape for all of it says
 * too little of the middle. So the shape is fitted again to ever less of the image around its
 * middle, and the widest fit is taken that no closer one contradicts (Lepski, Theory Probab. Appl.
 * 35, 1990, p. 454). Where the image is a Gaussian that is the whole. Where it is none, its middle
 * is that of a Gaussian on a level ({@link LevelFit}), if that is what is seen, or lies between
 * that and the closest bare Gaussian. In too much noise for that nothing tells how far the closest
 * fit is off itself: as far again as it is from the last but one is in the swing's interval. Not
 * thread-safe.
 */
final class StatedRise {
  private static final int FITTED = 4;

  /** A closer fit sees so many of the last one's widths to either side. */
  private static final double CLOSER = 1.2;

  private static final int LEAST_REACH = 2;

  /** A difference of so many standard errors of the closer fit contradicts the wider one. */
  private static final double CONTRADICTS = 3;

  /** A Gaussian is told from a level within so many of its widths to either side. */
  private static final double FLANKS = 0.8;

  /** In more noise, relative, than this nothing is said by levels. */
  private static final double MOST_NOISE = 0.05;

  private final MeanPlanes planes;
  private final MeanPlanes late;
  private final ResponseCurve curve;

  /**
   * @param planes that shapes are fitted in
   * @param late that amplitudes are taken from, which a start from cold is not in
   * @param curve what bodies show in the latter
   */
  StatedRise(MeanPlanes planes, MeanPlanes late, ResponseCurve curve) {
    this.planes = planes;
    this.late = late;
    this.curve = curve;
  }

  /**
   * What is said of the middle of a source.
   *
   * @param middle the fit that it rests on
   * @param inPhase amplitude in whole quarters
   * @param quadrature likewise
   */
  record Stated(
      GaussianFit middle, double inPhase, double quadrature, Swing swing, SettledRise settled) {}

  /** A fit of the whole image or of its middle. */
  private record Fit(
      GaussianFit gaussian,
      Amplitudes amplitudes,
      double shapeVariance,
      int column,
      int row,
      int reach) {
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
    OfMiddle middle = chosen == 0 ? null : onLevel(closest(fits), found, share, statistics);
    if (middle != null) {
      return stated(
          fit, middle.amplitudes(), middle.shapeVariance(), found, middle.ends(), middle.open());
    }
    List<Amplitudes> closer = new ArrayList<>();
    for (Fit other : fits.subList(chosen + 1, fits.size())) {
      closer.add(other.amplitudes());
    }
    return stated(fit, fit.amplitudes(), fit.shapeVariance(), found, closer, mayGoOn(fits, chosen));
  }

  private Stated stated(
      Fit fit,
      Amplitudes amplitudes,
      double shapeVariance,
      FoundSource found,
      List<Amplitudes> others,
      Interval open) {
    List<SettledRise> rises =
        others.stream().map(other -> SettledRise.ofOneBody(other, curve)).toList();
    WholePulse whole = WholePulse.of(amplitudes, curve);
    Amplitudes inWhole = whole.of(amplitudes);
    Swing swing =
        Swing.of(
            inWhole,
            shapeVariance + whole.relativeVariance(),
            found.stop(),
            others.stream().map(whole::of).toList(),
            whole.with(open, inWhole.size()));
    return new Stated(
        fit.gaussian(),
        inWhole.inPhase(),
        inWhole.quadrature(),
        swing,
        SettledRise.of(amplitudes, shapeVariance, curve)
            .withShapes(rises)
            .notBelow(swing.interval95().low()));
  }

  /** The closest fit that still sees the flanks of its Gaussian. */
  private static Fit closest(List<Fit> fits) {
    for (int k = fits.size() - 1; k > 0; k--) {
      if (fits.get(k).reach() >= FLANKS * fits.get(k).gaussian().sigma()) {
        return fits.get(k);
      }
    }
    return fits.get(fits.size() - 1);
  }

  /**
   * The middle of an image that is no Gaussian.
   *
   * @param ends of two shapes that have the truth between them; empty where one of them holds
   * @param open how far they are from the amplitudes told
   */
  private record OfMiddle(
      Amplitudes amplitudes, double shapeVariance, List<Amplitudes> ends, Interval open) {}

  /**
   * A Gaussian on a level where that is what is seen, else half way from a bare Gaussian, which
   * takes skirts for its own width, to that on a level, whose skirts never end; null where the
   * picture does not tell a Gaussian from a level.
   */
  private OfMiddle onLevel(Fit fit, FoundSource found, double share, WidthStatistics statistics) {
    double a = statistics.arc().weightI()[found.direction()];
    double b = statistics.arc().weightC()[found.direction()];
    double column = fit.gaussian().column();
    double row = fit.gaussian().row();
    LevelFit level = LevelFit.of(windowOf(planes, fit, found, a, b), column, row);
    if (level == null) {
      return null;
    }
    double i = share * level.middleOf(windowOf(late, fit, found, 1, 0), column, row);
    double c = share * level.middleOf(windowOf(late, fit, found, 0, 1), column, row);
    Amplitudes onLevel = amplitudes(i, c, statistics.noise(), level.energy());
    double square = level.middle() * level.middle() * planes.cycles();
    if (1 / level.energy() + level.widthVariance() > MOST_NOISE * MOST_NOISE * square) {
      return null;
    }
    double shapeVariance = level.widthVariance() / square;
    if (level.isWithinNoise(planes.cycles())) {
      return new OfMiddle(onLevel, shapeVariance, List.of(), new Interval(0, 0));
    }
    Amplitudes bare = fit.amplitudes();
    Amplitudes middle =
        amplitudes(
            (i + bare.inPhase()) / 2,
            (c + bare.quadrature()) / 2,
            statistics.noise(),
            level.energy());
    double half = Math.abs(onLevel.size() - bare.size()) / 2;
    return new OfMiddle(middle, shapeVariance, List.of(bare, onLevel), new Interval(-half, half));
  }

  private static Window windowOf(MeanPlanes of, Fit fit, FoundSource found, double a, double b) {
    return of.windowWithin(fit.column(), fit.row(), fit.reach(), a, b, found.others());
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
  private static Interval mayGoOn(List<Fit> fits, int chosen) {
    if (chosen == 0) {
      return new Interval(0, 0);
    }
    double closest = fits.get(fits.size() - 1).amplitudes().size();
    double lastButOne = fits.get(fits.size() - 2).amplitudes().size();
    double on = closest + (closest - lastButOne) - fits.get(chosen).amplitudes().size();
    return new Interval(Math.min(0, on), Math.max(0, on));
  }

  private Fit whole(
      FoundSource found, double share, WidthStatistics statistics, double a, double b) {
    Candidate at = found.candidate();
    GaussianFit fit = found.fit();
    Window window = planes.window(at.column(), at.row(), statistics.sigma(), a, b, found.others());
    double sigma = statistics.sigma();
    Window inPhase = late.window(at.column(), at.row(), sigma, 1, 0, found.others());
    Window quadrature = late.window(at.column(), at.row(), sigma, 0, 1, found.others());
    return new Fit(
        fit,
        amplitudes(fit, inPhase, quadrature, share, statistics.noise()),
        shapeVariance(fit, window),
        at.column(),
        at.row(),
        Integer.MAX_VALUE);
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
    Window inPhase = late.windowWithin(column, row, reach, 1, 0, others);
    Window quadrature = late.windowWithin(column, row, reach, 0, 1, others);
    return new Fit(
        fit,
        amplitudes(fit, inPhase, quadrature, share, noise),
        shapeVariance(fit, window),
        column,
        row,
        reach);
  }

  /** Of a fitted shape in both channels of a window. */
  private Amplitudes amplitudes(
      GaussianFit fit, Window inPhase, Window quadrature, double share, PooledNoise noise) {
    double i = GaussianFit.bestAmplitude(inPhase, fit.column(), fit.row(), fit.sigma());
    double c = GaussianFit.bestAmplitude(quadrature, fit.column(), fit.row(), fit.sigma());
    return amplitudes(share * i, share * c, noise, fit.energy());
  }

  private Amplitudes amplitudes(double i, double c, PooledNoise noise, double energy) {
    double perUnit = 1 / (late.cycles() * energy);
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
