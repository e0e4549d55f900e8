package railglow.thermal;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.DoubleFunction;
import java.util.function.DoubleUnaryOperator;
import railglow.thermal.Amplitudes.Settled;
import railglow.thermal.RiseByModel.Model;
import railglow.units.Interval;

/**
 * From the amplitudes in both channels to the final rise and the time constant of a first-order
 * body seen through the camera. Two amplitudes do not tell how heat goes on after a pulse, so the
 * interval holds what noise allows and what the model may be wrong by:
 *
 * <ul>
 *   <li>noise, by profile likelihood: every rise that some time constant of the range searched
 *       makes agree with the data;
 *   <li>the same of heat that spreads in a sheet, {@link SheetResponse}: one body settles lowest;
 *   <li>where no time constant agrees, the errors are taken as large as the misfit shows them to be
 *       (Birge, Phys. Rev. 40, 1932, p. 207);
 *   <li>where fits closer to the middle of the source make it another rise than noise explains,
 *       that difference, see {@link #withShapes}.
 * </ul>
 *
 * <p>The last two vanish for a Gaussian that warms as one body. Warming of the whole board over
 * minutes leaves nothing in step with pulses and is in no part of it. Immutable.
 *
 * @param kelvin final rise
 * @param interval95 of it
 * @param timeConstantSeconds of the body
 * @param models what each model that noise allows makes of it
 */
record SettledRise(
    double kelvin, Interval interval95, double timeConstantSeconds, List<RiseByModel> models) {
  private static final int STEPS = 80;

  /** A strong source's rise is known better than a step of the time constant changes it. */
  private static final int ZOOMS = 2;

  private static final double CHI_SQUARED_95 = 3.841458820694124;

  /**
   * A body that follows at once lies on the edge of what is possible, where half of the noise in
   * the quadrature is taken for delay: with this room the interval still covers 95 %.
   */
  private static final double AT_THE_EDGE = 5;

  /**
   * @param amplitudes in both channels, of the frames used
   * @param commonRelativeVariance of a factor common to both (the shape's)
   */
  static SettledRise of(Amplitudes amplitudes, double commonRelativeVariance, ResponseCurve curve) {
    return of(amplitudes, commonRelativeVariance, curve, true);
  }

  /** With noise alone in its interval, as if one body were the truth. */
  static SettledRise ofOneBody(Amplitudes amplitudes, ResponseCurve curve) {
    return of(amplitudes, 0, curve, false);
  }

  private static SettledRise of(
      Amplitudes amplitudes,
      double commonRelativeVariance,
      ResponseCurve curve,
      boolean mayBeSheet) {
    double[] taus = timeConstants(curve.settings());
    List<Settled> bodies = profile(taus, tau -> amplitudes.through(curve.seen(tau), tau));
    Settled best = best(bodies);
    double common = CHI_SQUARED_95 * commonRelativeVariance;
    double[] ends = {best.rise(), best.rise()};
    double leastTau = taus[0];
    widen(ends, bodies, best.chi(), tau -> tau == leastTau ? AT_THE_EDGE : CHI_SQUARED_95);
    List<RiseByModel> models = new ArrayList<>();
    models.add(new RiseByModel(Model.ONE_BODY, best.rise(), around(best.rise(), ends, common)));
    if (mayBeSheet && taus.length > 1) {
      double slowest = taus[taus.length - 1];
      double[] fastest = leastTau > 0 ? taus : Arrays.copyOfRange(taus, 1, taus.length);
      List<Settled> sheets =
          profile(
              fastest, tau -> amplitudes.through(SheetResponse.of(tau, slowest, curve::seen), tau));
      double sheet = best(sheets).rise();
      double[] sheetEnds = {sheet, sheet};
      if (widen(sheetEnds, sheets, best.chi(), tau -> CHI_SQUARED_95)) {
        models.add(new RiseByModel(Model.SHEET, sheet, around(sheet, sheetEnds, common)));
        ends[0] = Math.min(ends[0], sheetEnds[0]);
        ends[1] = Math.max(ends[1], sheetEnds[1]);
      }
    }
    return new SettledRise(
        best.rise(), around(best.rise(), ends, common), best.timeConstant(), List.copyOf(models));
  }

  /** The ends moved apart by an error of a share of the rise itself. */
  private static Interval around(double rise, double[] ends, double squaredShare) {
    double more = Math.sqrt(squaredShare) * rise;
    return new Interval(
        rise - Math.hypot(rise - ends[0], more), rise + Math.hypot(ends[1] - rise, more));
  }

  /**
   * The same with room for a shape that is no Gaussian common to both channels: heat that spreads
   * is wider in the late channel, and how that is averaged decides how much of it is in phase.
   *
   * @param others the rises, as of one body, of fits closer to the image's middle, which would all
   *     be the same but for noise if the shape were right
   */
  SettledRise withShapes(List<SettledRise> others) {
    double below = 0;
    double above = 0;
    for (SettledRise other : others) {
      if (other.kelvin < kelvin) {
        double noise = other.interval95.high() - other.kelvin;
        below = Math.max(below, beyond(kelvin - other.kelvin, noise));
      } else {
        double noise = other.kelvin - other.interval95.low();
        above = Math.max(above, beyond(other.kelvin - kelvin, noise));
      }
    }
    return new SettledRise(
        kelvin,
        new Interval(
            kelvin - Math.hypot(kelvin - interval95.low(), below),
            kelvin + Math.hypot(interval95.high() - kelvin, above)),
        timeConstantSeconds,
        models);
  }

  /** The same knowing that no place settles lower than it swings. */
  SettledRise notBelow(double swing) {
    double low = Math.min(Math.max(interval95.low(), swing), interval95.high());
    return new SettledRise(
        Math.max(kelvin, low), new Interval(low, interval95.high()), timeConstantSeconds, models);
  }

  /** What of a difference its noise does not explain. */
  static double beyond(double difference, double noise) {
    return Math.sqrt(Math.max(0, difference * difference - noise * noise));
  }

  /**
   * Moves the ends to every rise that agrees with the data about as well as the best.
   *
   * @return whether any does
   */
  private static boolean widen(
      double[] ends, List<Settled> fits, double bestChi, DoubleUnaryOperator roomAt) {
    double scale = Math.max(1, bestChi - CHI_SQUARED_95);
    boolean any = false;
    for (Settled fit : fits) {
      double room = roomAt.applyAsDouble(fit.timeConstant()) * scale - (fit.chi() - bestChi);
      if (room >= 0 && fit.rise() > 0) {
        double half = Math.sqrt(room / fit.information());
        ends[0] = Math.min(ends[0], fit.rise() - half);
        ends[1] = Math.max(ends[1], fit.rise() + half);
        any = true;
      }
    }
    return any;
  }

  /** Over the range, and ever closer round the best. */
  private static List<Settled> profile(double[] range, DoubleFunction<Settled> fitAt) {
    List<Settled> fits = new ArrayList<>();
    double[] taus = range;
    for (double tau : taus) {
      fits.add(fitAt.apply(tau));
    }
    for (int zoom = 0; zoom < ZOOMS && taus.length > 1; zoom++) {
      taus = between(taus, best(fits).timeConstant());
      for (double tau : taus) {
        fits.add(fitAt.apply(tau));
      }
    }
    return fits;
  }

  private static Settled best(List<Settled> fits) {
    Settled best = fits.get(0);
    for (Settled fit : fits) {
      if (fit.rise() > 0 && (!(best.rise() > 0) || fit.chi() < best.chi())) {
        best = fit;
      }
    }
    return best;
  }

  /** The same number of steps from the neighbour before to the neighbour after. */
  private static double[] between(double[] taus, double tau) {
    int at = 0;
    while (at < taus.length - 1 && taus[at] < tau) {
      at++;
    }
    double from = taus[Math.max(0, at - 1)];
    double to = taus[Math.min(taus.length - 1, at + 1)];
    double[] steps = new double[STEPS];
    for (int k = 0; k < STEPS; k++) {
      steps[k] = from + (to - from) * k / (STEPS - 1);
    }
    return steps;
  }

  private static double[] timeConstants(DetectionSettings settings) {
    double[] searched = settings.bodyTimeConstantsSeconds();
    double least = searched[0];
    double most = searched[searched.length - 1];
    if (most <= least) {
      return new double[] {least};
    }
    double from = Math.max(least, settings.periodSeconds() / 1000);
    double[] taus = new double[STEPS];
    taus[0] = least;
    for (int k = 1; k < STEPS; k++) {
      taus[k] = from * Math.pow(most / from, (k - 1.0) / (STEPS - 2));
    }
    return taus;
  }
}
