package railglow.thermal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Fits the shape, place and rise of sources in the unfiltered mean planes. Not thread-safe. */
final class SourceFit {
  /** No optics makes an image narrower than this; what is narrower is a bad pixel. */
  static final double NARROWEST_PIXELS = 0.6;

  /**
   * The largest signal to noise ratio over place, width and delay exceeds that at the source's own
   * by (free axes) / (2 ratio): relative to the ratio this over its square.
   */
  private static final double PEAK_BIAS = 2.5;

  /** What scores less is not called, and need not be told apart. */
  private static final double WORTH_PARTING = 4.5;

  private static final double NARROW_SMOOTHING = 1.5;

  /** Second-order growth of the position's variance in much noise, by simulation. */
  private static final double CURVATURE = 30;

  private final ResponseCurve curve;
  private final MeanPlanes planes;
  private final MeanPlanes latePlanes;
  private final WidthStatistics[] statistics;
  private final Climb climb;
  private final BesideStronger beside;

  /**
   * @param planes in which sources were found
   * @param latePlanes the same without the start: swings are told from them
   */
  SourceFit(
      ResponseCurve curve, MeanPlanes planes, MeanPlanes latePlanes, WidthStatistics[] statistics) {
    this.curve = curve;
    this.planes = planes;
    this.latePlanes = latePlanes;
    this.statistics = statistics;
    this.climb = new Climb(planes, statistics);
    this.beside = new BesideStronger(planes, statistics);
  }

  /**
   * Fits a candidate with other sources taken out; null when it is a bad pixel.
   *
   * @param wide the candidate
   * @param stop what stopping by it does to the score
   * @param close whether only the middle of the image is to be fitted, because neighbours may not
   *     have been taken out yet
   */
  FoundSource fit(
      Candidate wide, double familyWiseP, EarlyStop stop, List<Blob> others, boolean close) {
    if (close) {
      Candidate top = climb.from(wide, others);
      TwinImages.Pair pair = twins(top, others);
      return pair == null
          ? fitAt(top, familyWiseP, stop, others, true)
          : fitAt(at(pair, top), familyWiseP, stop, besides(pair, top, others), true);
    }
    return fitAt(wide, familyWiseP, stop, others, false);
  }

  private FoundSource fitAt(
      Candidate candidate, double familyWiseP, EarlyStop stop, List<Blob> others, boolean close) {
    WidthStatistics s = statistics[candidate.widthIndex()];
    int direction = direction(candidate, s, others);
    double a = s.arc().weightI()[direction];
    double b = s.arc().weightC()[direction];
    GaussianFit.Window window = window(candidate, close ? s.sigma() / 2 : s.sigma(), a, b, others);
    GaussianFit fit = GaussianFit.of(window, candidate.column(), candidate.row(), s.sigma());
    if (fit != null && fit.sigma() < NARROWEST_PIXELS) {
      return null;
    }
    if (fit == null || !(fit.amplitude() > 0) || !near(fit, candidate, s.sigma())) {
      fit = GaussianFit.held(window, candidate.column(), candidate.row(), s.sigma());
    }
    double inPhase = amplitude(candidate, s.sigma(), 1, 0, others, fit);
    double quadrature = amplitude(candidate, s.sigma(), 0, 1, others, fit);
    Blob blob = new Blob(fit.column(), fit.row(), fit.sigma(), inPhase, quadrature);
    return new FoundSource(candidate, familyWiseP, stop, direction, fit, blob, others);
  }

  /** The two images that a wide filter took for one; null where there is one. */
  private TwinImages.Pair twins(Candidate candidate, List<Blob> others) {
    WidthStatistics s = statistics[candidate.widthIndex()];
    if (candidate.widthIndex() == 0 || statistics[0] == null || candidate.score() < WORTH_PARTING) {
      return null;
    }
    int direction = direction(candidate, s, others);
    double a = s.arc().weightI()[direction];
    double b = s.arc().weightC()[direction];
    GaussianFit.Window window = window(candidate, s.sigma(), a, b, others);
    return TwinImages.in(window, candidate.column(), candidate.row(), s.sigma(), planes.cycles());
  }

  private Candidate at(TwinImages.Pair pair, Candidate both) {
    int column = (int) Math.round(pair.stronger()[0]);
    int row = (int) Math.round(pair.stronger()[1]);
    return planes.isInside(column, row) ? new Candidate(column, row, both.score(), 0) : both;
  }

  /** The others and, until it is found itself, the weaker of a pair. */
  private List<Blob> besides(TwinImages.Pair pair, Candidate both, List<Blob> others) {
    double column = pair.weaker()[0];
    double row = pair.weaker()[1];
    double sigma = statistics[both.widthIndex()].sigma();
    double[] amplitudes = new double[2];
    for (int channel = 0; channel < 2; channel++) {
      GaussianFit.Window window = window(both, sigma, 1 - channel, channel, others);
      amplitudes[channel] = GaussianFit.bestAmplitude(window, column, row, pair.sigma());
    }
    List<Blob> all = new ArrayList<>(others);
    all.add(new Blob(column, row, pair.sigma(), amplitudes[0], amplitudes[1]));
    return all;
  }

  /** Whether a source is more than the flank of a stronger one. */
  boolean isApart(FoundSource source, Blob stronger) {
    return beside.isApart(source, stronger);
  }

  /** The direction of the arc in which the candidate is strongest. */
  private int direction(Candidate candidate, WidthStatistics s, List<Blob> others) {
    double column = candidate.column();
    double row = candidate.row();
    double i =
        GaussianFit.bestAmplitude(
            window(candidate, s.sigma(), 1, 0, others), column, row, s.sigma());
    double c =
        GaussianFit.bestAmplitude(
            window(candidate, s.sigma(), 0, 1, others), column, row, s.sigma());
    int best = 0;
    double most = Double.NEGATIVE_INFINITY;
    for (int j = 0; j < s.arc().directions(); j++) {
      double y = s.arc().weightI()[j] * i + s.arc().weightC()[j] * c;
      if (y > most) {
        most = y;
        best = j;
      }
    }
    return best;
  }

  /**
   * Whether what shows at another place is no more than a share of a source, or than what its own
   * heat can leave that late.
   *
   * @param before what was taken out to find the source
   * @param now what is taken out to see the other place
   */
  boolean isOfTheHeatOf(
      FoundSource source, List<Blob> before, Candidate place, List<Blob> now, double share) {
    double sigma = statistics[place.widthIndex()].sigma();
    double[] there = planes.smoothed(place.column(), place.row(), sigma, now);
    double[] here = planes.smoothed(source.blob().column(), source.blob().row(), sigma, before);
    return Math.hypot(there[0], there[1])
        <= Math.max(share, LateHeat.share(here, there)) * Math.hypot(here[0], here[1]);
  }

  /** What any other place may leave of its heat, a pulse later, where a source seems to be. */
  double mostLateHeat(FoundSource source, ScoreField field) {
    Blob blob = source.blob();
    double[] here = {blob.inPhase(), blob.quadrature()};
    double size = Math.hypot(here[0], here[1]);
    float[] scores = field.scores();
    double most = 0;
    for (int i = 0; i < scores.length; i++) {
      if (scores[i] >= ScoreField.WORTH_A_SECOND_LOOK
          && field.isPeak(i)
          && planes.size(i) >= size) {
        double[] there =
            planes.smoothed(i % planes.width(), i / planes.width(), NARROW_SMOOTHING, List.of());
        double left = LateHeat.shareAtNextPulse(there, here) * Math.hypot(there[0], there[1]);
        most = Math.max(most, left);
      }
    }
    return most;
  }

  /** A found source in the terms of the user. */
  HeatSource describe(FoundSource found, CycleSigns signs) {
    Candidate candidate = found.candidate();
    GaussianFit fit = found.fit();
    WidthStatistics s = statistics[candidate.widthIndex()];
    double stopShare = found.stop().share();
    // along the direction searched the filter's normalised noise has variance 1 per cycle
    double variance = 1.0 / planes.cycles();
    double square = Math.max(fit.amplitude() * fit.amplitude() * fit.energy() / variance, 9);
    double share = stopShare * (1 - PEAK_BIAS / square);
    double spread = variance * (1 + CURVATURE / square) / (stopShare * stopShare);
    StatedRise.Stated stated = new StatedRise(planes, latePlanes, curve).of(found, share, s);
    SettledRise rise = stated.settled();
    GaussianFit middle = stated.middle();
    int pixel = candidate.row() * planes.width() + candidate.column();
    return new HeatSource(
        middle.column(),
        middle.row(),
        spread * middle.covariance()[1][1],
        spread * middle.covariance()[2][2],
        spread * middle.covariance()[1][2],
        stated.swing().kelvin(),
        stated.swing().interval95(),
        rise.kelvin(),
        rise.interval95(),
        stated.inPhase(),
        stated.quadrature(),
        rise.timeConstantSeconds(),
        middle.sigma(),
        found.familyWiseP(),
        signs.share(pixel, Math.atan2(stated.quadrature(), stated.inPhase())),
        rise.models());
  }

  /** What speaks against heat, see HeatLikeness. */
  Optional<NotHeat> objection(FoundSource found, HeatSource source) {
    double score = found.candidate().score();
    if (HeatLikeness.missesCycles(score, planes.cycles(), source.cycleConsistency())) {
      return Optional.of(NotHeat.NOT_IN_EVERY_CYCLE);
    }
    return HeatLikeness.objection(
        found.blob().inPhase(),
        found.blob().quadrature(),
        statistics[found.candidate().widthIndex()].noise(),
        1 / (planes.cycles() * found.fit().energy()),
        curve.settings());
  }

  private static boolean near(GaussianFit fit, Candidate candidate, double sigma) {
    double far = Math.hypot(fit.column() - candidate.column(), fit.row() - candidate.row());
    return far <= 2 * sigma + 1 && fit.sigma() <= 3 * sigma;
  }

  private double amplitude(
      Candidate candidate, double sigma, double a, double b, List<Blob> others, GaussianFit fit) {
    GaussianFit.Window window = window(candidate, sigma, a, b, others);
    return GaussianFit.bestAmplitude(window, fit.column(), fit.row(), fit.sigma());
  }

  private GaussianFit.Window window(
      Candidate at, double sigma, double a, double b, List<Blob> others) {
    return planes.window(at.column(), at.row(), sigma, a, b, others);
  }
}
