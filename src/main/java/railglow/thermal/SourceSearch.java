package railglow.thermal;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.function.DoubleFunction;
import java.util.function.DoubleUnaryOperator;

/**
 * Finds sources one after the other: the strongest is fitted and taken out of the means, the scores
 * are made anew, and so on; at the end each is fitted again with the others taken out. Made for one
 * look.
 */
final class SourceSearch {
  private static final int MOST_SOURCES = 6;
  private static final int MOST_ATTEMPTS = 30;
  private static final int REFINEMENTS = 3;

  /** So much of what was taken out may be error of the shape assumed. */
  private static final double SHAPE_DOUBT = 0.05;

  /** Weaker than this share of the strongest may be left of its skirts and of common parts. */
  private static final double LEAST_SHARE = 0.02;

  /**
   * What is of the other sign does not speak against a source where it is weaker than this share of
   * it, or than its heat can be that late.
   */
  private static final double MIRROR_SHARE = 0.25;

  private static final double DOUBT_SIGMAS = 2;

  private final SourceFit fit;
  private final ScoreField field;
  private final Candidates candidates;
  private final WidthStatistics[] statistics;
  private final int cycles;

  SourceSearch(
      SourceFit fit,
      ScoreField field,
      int width,
      int height,
      WidthStatistics[] statistics,
      int cycles) {
    this.fit = fit;
    this.field = field;
    this.candidates = new Candidates(width, height);
    this.statistics = statistics;
    this.cycles = cycles;
  }

  /**
   * All sources called, strongest first; the strongest candidate alone when none is.
   *
   * @param bound score to call
   * @param verdict gives the family-wise p of a score
   * @param stop gives what stopping by a score does to it
   */
  List<FoundSource> sources(
      double bound,
      DoubleUnaryOperator verdict,
      DoubleFunction<EarlyStop> stop,
      LookScores lookScores) {
    List<FoundSource> found = new ArrayList<>();
    for (int attempt = 0; attempt < MOST_ATTEMPTS && found.size() < MOST_SOURCES; attempt++) {
      Candidate candidate = candidates.strongest(field);
      boolean called = candidate != null && candidate.score() >= bound;
      if (candidate == null || !found.isEmpty() && !called) {
        break;
      }
      double sigma = statistics[candidate.widthIndex()].sigma();
      EarlyStop stopped = called ? stop.apply(candidate.score()) : EarlyStop.NONE;
      double p = verdict.applyAsDouble(candidate.score());
      FoundSource source = fit.fit(candidate, p, stopped, blobs(found, null), true);
      if (source == null
          || !found.isEmpty() && !isBesides(source, found, bound)
          || called && !isOfItsOwn(source, found)) {
        candidates.claim(candidate.column(), candidate.row(), 2 * sigma);
      } else {
        List<Blob> before = blobs(found, null);
        found.add(source);
        if (!called) {
          break;
        }
        Blob blob = source.blob();
        candidates.claim(blob.column(), blob.row(), 2 * blob.sigma());
        lookScores.without(blobs(found, null));
        boolean near = LookScores.isNearAny(before, blob.column(), blob.row());
        List<Blob> now = blobs(found, null);
        double control =
            lookScores.mirrored(
                candidate.score(),
                now,
                near,
                c -> !fit.isOfTheHeatOf(source, before, c, now, MIRROR_SHARE));
        if (control > 0) {
          // as strong as what can't be heat: neither this nor anything weaker says anything
          found.set(
              found.size() - 1,
              source.with(verdict.applyAsDouble(candidate.score() * bound / control)));
          break;
        }
      }
    }
    return refined(found);
  }

  private static double size(FoundSource source) {
    return Math.hypot(source.blob().inPhase(), source.blob().quadrature());
  }

  /**
   * Whether it is surely more than what stronger heat elsewhere, called or not, leaves far away.
   */
  private boolean isOfItsOwn(FoundSource source, List<FoundSource> found) {
    double[] here = {source.blob().inPhase(), source.blob().quadrature()};
    double left = 0;
    for (FoundSource other : found) {
      double[] there = {other.blob().inPhase(), other.blob().quadrature()};
      left += LateHeat.shareAtNextPulse(there, here) * size(other);
    }
    double surely = Math.max(0, 1 - DOUBT_SIGMAS / source.candidate().score());
    return surely * size(source) > Math.max(left, fit.mostLateHeat(source, field));
  }

  /**
   * Whether it is more than error of the stronger sources' shapes. Whether it is apart from them is
   * asked last: it is dear to tell far away, and around a strong source dozens are too weak anyway.
   */
  private boolean isBesides(FoundSource source, List<FoundSource> found, double bound) {
    Candidate c = source.candidate();
    WidthStatistics s = statistics[c.widthIndex()];
    double takenOut = 0;
    for (FoundSource other : found) {
      Blob blob = other.blob();
      double size = s.unitSignal(new FirstOrderResponse(blob.inPhase(), blob.quadrature()));
      takenOut += size * blob.filtered(c.column(), c.row(), s.sigma()) * Math.sqrt(cycles);
    }
    return c.score() - SHAPE_DOUBT * takenOut >= bound
        && size(source) >= LEAST_SHARE * size(found.get(0))
        && found.stream().allMatch(other -> fit.isApart(source, other.blob()));
  }

  private List<FoundSource> refined(List<FoundSource> found) {
    List<FoundSource> now = new ArrayList<>(found);
    List<List<Blob>> fittedBeside = new ArrayList<>(Collections.nCopies(now.size(), null));
    for (int round = 0; round < REFINEMENTS; round++) {
      for (int k = 0; k < now.size(); k++) {
        FoundSource old = now.get(k);
        List<Blob> others = blobs(now, old);
        // beside the same others it would be the same fit
        if (!others.equals(fittedBeside.get(k))) {
          FoundSource better =
              fit.fit(old.candidate(), old.familyWiseP(), old.stop(), others, false);
          now.set(k, better == null ? old : better);
          fittedBeside.set(k, others);
        }
      }
    }
    return now;
  }

  static List<Blob> blobs(List<FoundSource> sources, FoundSource except) {
    List<Blob> blobs = new ArrayList<>();
    for (FoundSource source : sources) {
      if (source != except) {
        blobs.add(source.blob());
      }
    }
    return blobs;
  }
}
