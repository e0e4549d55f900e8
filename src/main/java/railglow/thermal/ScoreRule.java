package railglow.thermal;

import java.util.Arrays;

/**
 * How the moments of one width become a normal score at one look: typical noise, directions, and
 * the tables made from them. Made once per width and look, used for every pixel. Not thread-safe.
 */
final class ScoreRule {
  /**
   * Scatter of this share of a pixel's own signal is laid to the signal: pulses and labels are not
   * perfectly even, and the first cycles of a slow body are not like the later ones.
   */
  static final double WOBBLE = 0.1;

  /** Far more than tables are off. */
  private static final double OFF = 0.98;

  /** With fewer the scatter of the other cycles says nothing. */
  private static final int LEAST_DEGREES = 3;

  private final PooledNoise noise;
  private final DelayArc arc;
  private final int degrees;
  private final Doubt all;
  private final WildMap wildLater;
  private final float[] perDeviation;
  private Doubt later;

  /**
   * @param moments at this width, all of the picture, in units of {@code perDeviation}
   * @param scale 0 at pixels without data
   * @param perDeviation see {@link LineNoise}; null where no line stands out
   */
  ScoreRule(
      PooledNoise noise,
      DelayArc arc,
      ChannelMoments moments,
      float[] scale,
      int width,
      double sigma,
      float[] perDeviation) {
    this.noise = noise;
    this.perDeviation = perDeviation;
    this.arc = arc;
    this.degrees = moments.cycles() - 1;
    boolean isWild = noise.isLocal();
    WildMap wild = isWild ? WildMap.of(moments, scale, width, sigma, noise, false) : null;
    all = Doubt.of(degrees + 1, noise, wild);
    wildLater =
        isWild && degrees >= LEAST_DEGREES
            ? WildMap.of(moments, scale, width, sigma, noise, true)
            : null;
  }

  private ScoreRule(ScoreRule other, DelayArc arc) {
    noise = other.noise;
    this.arc = arc;
    degrees = other.degrees;
    all = other.all;
    wildLater = other.wildLater;
    perDeviation = other.perDeviation;
    later = other.later;
  }

  /** The same for the opposite directions. */
  ScoreRule mirrored() {
    return new ScoreRule(this, arc.mirrored());
  }

  /** Brings moments into the units of this rule. */
  void evenOut(RowMoments moments) {
    moments.evenOut(perDeviation);
  }

  /** Whether a pixel's own scatter has a say in its squares. */
  boolean asksForScatter() {
    return !Double.isInfinite(noise.priorDegrees());
  }

  /** Moderated degrees of freedom, never more than those of the typical variance itself. */
  static double totalDegrees(PooledNoise noise, int degrees) {
    return Math.min(noise.priorDegrees() + degrees, Math.max(degrees, noise.pooledDegrees()));
  }

  /**
   * For pixels from one to before another the signed square of the moderated t along the direction
   * in which it is largest.
   */
  void squares(ChannelMoments moments, float[] into, int from, int to) {
    if (!asksForScatter()) {
      Extremes.most(moments, arc, into, from, to);
      Extremes.square(into, moments.cycles(), from, to);
      return;
    }
    Arrays.fill(into, from, to, Float.NEGATIVE_INFINITY);
    for (int j = 0; j < arc.directions(); j++) {
      direction(j).keepLargest(moments, into, from, to);
    }
  }

  /**
   * Whether the square of any direction, mirrored or not, can be as high as a limit at one of the
   * first pixels. Where a pixel's own scatter has a say this is not asked: true.
   *
   * @param work overwritten
   */
  boolean canReach(float limit, ChannelMoments moments, float[] work, int n) {
    if (asksForScatter()) {
      return true;
    }
    Extremes.bounds(moments, noise, work, 0, n);
    return Extremes.reach(work, limit, n);
  }

  /**
   * The same, and that of the opposite directions: of each direction once.
   *
   * @param work overwritten at these pixels
   */
  void squares(
      ChannelMoments moments, float[] into, float[] mirrored, float[] work, int from, int to) {
    if (!asksForScatter()) {
      Extremes.mostAndLeast(moments, arc, into, mirrored, from, to);
      Extremes.square(into, moments.cycles(), from, to);
      Extremes.square(mirrored, -moments.cycles(), from, to);
      return;
    }
    Arrays.fill(into, from, to, Float.NEGATIVE_INFINITY);
    Arrays.fill(mirrored, from, to, Float.NEGATIVE_INFINITY);
    for (int j = 0; j < arc.directions(); j++) {
      direction(j).squares(moments, work, from, to);
      for (int i = from; i < to; i++) {
        into[i] = Math.max(into[i], work[i]);
      }
      for (int i = from; i < to; i++) {
        mirrored[i] = Math.max(mirrored[i], -work[i]);
      }
    }
  }

  private Direction direction(int j) {
    float a = (float) arc.weightI()[j];
    float b = (float) arc.weightC()[j];
    double all = noise.priorDegrees() + degrees;
    float share = (float) (1 / all);
    float inflated = (float) Math.sqrt(noise.scatterToMeanI()) * a;
    return new Direction(
        a,
        b,
        (float) (noise.priorDegrees() / all),
        share * inflated * inflated,
        share * b * b,
        2 * share * inflated * b);
  }

  /** The score of such a square; below 3 within 2e-5 of what the tables say. */
  float score(float square) {
    float t = (float) Math.sqrt(Math.abs(square));
    return Math.copySign(all.shared().near(t), square);
  }

  /** No smaller square has a score as high, by far more than tables are off. */
  float squareBelow(double score) {
    double t = OFF * NormalScore.toT(score, totalDegrees(noise, degrees));
    return (float) (t * t);
  }

  /**
   * Takes the largest score over the arc, each direction weighed against the pixel's own scatter.
   * The first cycle of a body that starts cold is not like the others: where the others alone leave
   * less doubt, they count.
   *
   * @param enough once one is as high the others need not be known
   */
  void takeDoubted(int i, PixelMoments m, double enough, LargestScore best) {
    PixelDoubt ofAll = new PixelDoubt(all, i, m.whitened(noise, false) / (2 * degrees));
    PixelDoubt ofLater = degrees < LEAST_DEGREES ? null : doubtLater(i, m);
    double[] t = new double[arc.directions()];
    for (int j = 0; j < t.length; j++) {
      t[j] = all.t(meanAlong(j, m), squaresAlong(j, m), noise);
    }
    // a doubt never raises a score: the strongest first, as long as they are above the best
    for (int k = 0; k < t.length && best.score() < enough; k++) {
      int j = largest(t);
      if (!weigh(j, t[j], m, ofAll, ofLater, best)) {
        break;
      }
      t[j] = Double.NEGATIVE_INFINITY;
    }
  }

  private PixelDoubt doubtLater(int i, PixelMoments m) {
    if (later == null) {
      later = Doubt.of(degrees, noise, wildLater);
    }
    return new PixelDoubt(later, i, m.whitened(noise, true) / (2 * (degrees - 1)));
  }

  private double meanAlong(int j, PixelMoments m) {
    return arc.weightI()[j] * m.meanI() + arc.weightC()[j] * m.meanC();
  }

  private double squaresAlong(int j, PixelMoments m) {
    double a = Math.sqrt(noise.scatterToMeanI()) * arc.weightI()[j];
    double b = arc.weightC()[j];
    return a * a * m.squaresI() + b * b * m.squaresC() + 2 * a * b * m.products();
  }

  private static int largest(double[] values) {
    int largest = 0;
    for (int j = 1; j < values.length; j++) {
      largest = values[j] > values[largest] ? j : largest;
    }
    return largest;
  }

  /**
   * Along one direction, by all cycles and without the first.
   *
   * @return whether one of a smaller t may be above the best
   */
  private boolean weigh(
      int j, double t, PixelMoments m, PixelDoubt ofAll, PixelDoubt ofLater, LargestScore best) {
    double mean = meanAlong(j, m);
    double squares = squaresAlong(j, m);
    double deviation = m.firstDeviation(arc.weightI()[j], arc.weightC()[j]);
    double laterMean = mean - deviation / degrees;
    double laterSquares = Math.max(0, squares - deviation * deviation * (degrees + 1) / degrees);
    boolean allMayWin = !ofAll.cannotWin(mean, squares, best);
    boolean laterMayWin = ofLater != null && !ofLater.cannotWin(laterMean, laterSquares, best);
    if (!allMayWin && !laterMayWin) {
      return true;
    }
    double score = all.shared().score(t);
    if (!(score > best.score())) {
      return false;
    }
    if (!(score > WildPixels.MOST_UNDOUBTED)) {
      best.take(score);
      return true;
    }
    if (allMayWin) {
      ofAll.weigh(score, mean, squares, best);
    }
    if (laterMayWin && score > best.score()) {
      double plain = Math.min(score, later.plain(laterMean, laterSquares, noise));
      if (plain > Math.max(WildPixels.MOST_UNDOUBTED, best.score())) {
        ofLater.weigh(plain, laterMean, laterSquares, best);
      } else {
        best.take(plain);
      }
    }
    return true;
  }

  /**
   * Signed squares of the moderated t along a I + b C. Short loops over one index, for the JIT
   * compiler to make vectors of (decision 0090); the formula is inlined in both.
   *
   * @param prior what the typical variance has in a pixel's
   * @param shareI what the in-phase channel's scatter has, and so on
   */
  private record Direction(
      float a, float b, float prior, float shareI, float shareC, float shareIC) {
    // a loop of its own: with the squares stored first and compared afterwards it takes longer
    void keepLargest(ChannelMoments moments, float[] best, int from, int to) {
      float k = moments.cycles();
      float[] meanI = moments.meanI();
      float[] meanC = moments.meanC();
      float[] sII = moments.squaresI();
      float[] sCC = moments.squaresC();
      float[] sIC = moments.products();
      for (int i = from; i < to; i++) {
        best[i] = Math.max(best[i], square(k, meanI[i], meanC[i], sII[i], sCC[i], sIC[i]));
      }
    }

    void squares(ChannelMoments moments, float[] into, int from, int to) {
      float k = moments.cycles();
      float[] meanI = moments.meanI();
      float[] meanC = moments.meanC();
      float[] sII = moments.squaresI();
      float[] sCC = moments.squaresC();
      float[] sIC = moments.products();
      for (int i = from; i < to; i++) {
        into[i] = square(k, meanI[i], meanC[i], sII[i], sCC[i], sIC[i]);
      }
    }

    private float square(float k, float meanI, float meanC, float sII, float sCC, float sIC) {
      float y = a * meanI + b * meanC;
      float variance = prior + shareI * sII + shareC * sCC + shareIC * sIC;
      return k * y * Math.abs(y) / variance;
    }
  }
}
