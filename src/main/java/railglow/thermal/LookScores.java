package railglow.thermal;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.Predicate;

/**
 * The scores of one look, before and after found sources are taken out of its means. Only pixels
 * that the newest source reaches through the widest filter can change, so only they are scored
 * again: the bits are those of doing it everywhere. Made for one look; not thread-safe.
 *
 * <p>Beside the scores it keeps those of the mirrored directions, where they are as high as what is
 * called: nothing on a board cools while the current flows, so these show how strongly other things
 * than heat follow the pulse here.
 */
final class LookScores {
  private final int width;
  private final int height;
  private final WidthPlanes[] widths;
  private final CommonParts.Removed removedI;
  private final CommonParts.Removed removedC;
  private final TakenOut takenOut;
  private final ScoreRule[] rules;
  private final ScoreField field;
  private final ChannelMoments scratch;
  private final double bound;
  private final Area whole;
  private final RowMoments[] moments;
  private final float[][] squares;
  private final float[] leastCalled;
  private final ScoreRule[] opposite;
  private final float[] mirrored;
  private final float[] work;
  private ScoreField mirror;
  private int blobsTakenOut;

  /**
   * @param rules per width; null where nothing could be scored
   * @param field becomes that of the look
   * @param scratch overwritten
   * @param bound score to call
   */
  LookScores(
      int width,
      int height,
      WidthPlanes[] widths,
      CommonParts.Removed removedI,
      CommonParts.Removed removedC,
      ScoreRule[] rules,
      ScoreField field,
      ChannelMoments scratch,
      double bound) {
    this.width = width;
    this.height = height;
    this.widths = widths;
    this.removedI = removedI;
    this.removedC = removedC;
    this.rules = rules;
    this.field = field;
    this.scratch = scratch;
    this.bound = bound;
    whole = Area.whole(width, height);
    takenOut = new TakenOut(width, widths, removedI, removedC);
    moments = new RowMoments[widths.length];
    RowMoments first = new RowMoments(width);
    Arrays.setAll(moments, w -> new RowMoments(first));
    squares = new float[widths.length][width];
    leastCalled = new float[widths.length];
    opposite = new ScoreRule[widths.length];
    for (int w = 0; w < widths.length; w++) {
      if (rules[w] != null) {
        leastCalled[w] = rules[w].squareBelow(bound);
        opposite[w] = rules[w].mirrored();
      }
    }
    mirrored = new float[width];
    work = new float[width];
    field.clear(whole);
  }

  /** Whether anything is called. */
  boolean callsAny() {
    for (int row = 0; row < height; row++) {
      if (callsAny(row)) {
        return true;
      }
    }
    return false;
  }

  /** The same; afterwards every pixel that is called is known as such. */
  private boolean findsCalled() {
    boolean any = false;
    for (int row = 0; row < height; row++) {
      any |= callsAny(row);
    }
    return any;
  }

  private boolean callsAny(int row) {
    boolean any = false;
    for (int w = 0; w < widths.length; w++) {
      if (rules[w] != null) {
        any |= field.includeAbove(measured(w, row, whole), bound, leastCalled[w], true);
      }
    }
    return any;
  }

  /**
   * Scores every pixel. As soon as one is called the others are scored only as far as is needed to
   * know whether they are called too: what cleaning left around heat is in all of them, and goes
   * first.
   *
   * @param clearsLines whether {@link #clearLines} follows
   * @param expectsSources whether to look for what is called first, since it was before
   */
  void scoreAll(boolean clearsLines, boolean expectsSources) {
    if (clearsLines && expectsSources && findsCalled()) {
      return;
    }
    boolean any = false;
    for (int row = 0; row < height; row++) {
      if (any && clearsLines) {
        callsAny(row);
      } else {
        any |= field.include(measured(row, whole)) >= bound;
      }
    }
  }

  /**
   * Takes out of the mean planes, and of all that follows, what cleaning left around heat. To be
   * called before anything else, where something is called at all.
   */
  void clearLines(ChannelMoments plain, float[] mask, DelayArc widestArc) {
    List<Integer> called = new ArrayList<>();
    float[] scores = field.scores();
    for (int i = 0; i < scores.length; i++) {
      if (scores[i] >= bound) {
        called.add(i);
      }
    }
    int w = widths.length - 1;
    if (rules[w] == null || called.isEmpty()) {
      return;
    }
    widths[w].meansInto(scratch);
    HeatRegion heat = HeatRegion.around(called, scratch, widestArc, width, height);
    BesideHeat beside = new BesideHeat(heat, mask, width, height);
    LineResidue inPhase = beside.residue(plain.meanI(), removedI);
    LineResidue quadrature = beside.residue(plain.meanC(), removedC);
    inPhase.subtractFrom(plain.meanI(), mask);
    quadrature.subtractFrom(plain.meanC(), mask);
    takenOut.lines(inPhase, quadrature, mask);
    rescore(whole);
  }

  /** The list of the call before, and one more. */
  void without(List<Blob> blobs) {
    for (; blobsTakenOut < blobs.size(); blobsTakenOut++) {
      Blob blob = blobs.get(blobsTakenOut);
      takenOut.blob(blob, width, height);
      Area area = blob.area(width, height).grown(widest(), width, height);
      rescore(mirror == null ? whole : area);
    }
  }

  /**
   * The largest mirrored score where something of the other sign is as sure as a source after it
   * was taken out, and not much weaker; 0 where nothing is. Where a source was taken out its
   * shape's error shows, which says nothing about places elsewhere; its farther skirts are as sure
   * as the source itself but weak.
   *
   * @param score of the source
   * @param near whether to count the places around the blobs, too
   * @param isStrong whether what is at a mirrored candidate counts
   */
  double mirrored(double score, List<Blob> blobs, boolean near, Predicate<Candidate> isStrong) {
    float[] scores = mirror.scores();
    double most = 0;
    for (int i = 0; i < scores.length; i++) {
      boolean counts =
          scores[i] >= Math.max(score, most)
              && (near || !isNearAny(blobs, i % width, i / width))
              && isStrong.test(
                  new Candidate(i % width, i / width, scores[i], mirror.widthIndexAt(i)));
      most = counts ? scores[i] : most;
    }
    return most;
  }

  /** Whether the error of some blob's shape may reach a place. */
  static boolean isNearAny(List<Blob> blobs, double x, double y) {
    for (Blob blob : blobs) {
      if (Math.hypot(x - blob.column(), y - blob.row()) <= 6 * blob.sigma() + 4) {
        return true;
      }
    }
    return false;
  }

  private void rescore(Area area) {
    mirror = mirror == null ? new ScoreField(width, height) : mirror;
    field.clear(area);
    mirror.clear(area);
    for (int w = 0; w < widths.length; w++) {
      if (rules[w] != null) {
        takenOut.prepare(w, area);
      }
    }
    for (int row = area.top(); row < area.bottom(); row++) {
      field.include(measured(row, area));
    }
  }

  private int widest() {
    int radius = 0;
    for (WidthPlanes each : widths) {
      radius = Math.max(radius, each.filter().radius());
    }
    return radius;
  }

  /** At every width, see below. */
  private List<RowTests> measured(int row, Area area) {
    List<RowTests> tests = new ArrayList<>();
    for (int w = 0; w < widths.length; w++) {
      if (rules[w] != null) {
        tests.add(measured(w, row, area));
      }
    }
    return tests;
  }

  /** Along a row, without what was taken out; the mirror is told what it can see. */
  private RowTests measured(int w, int row, Area area) {
    int start = row * width + area.left();
    int n = area.columns();
    ScoreRule rule = rules[w];
    moments[w].set(widths[w], start, n, rule.asksForScatter());
    if (mirror != null) {
      takenOut.takeOutOf(moments[w], w, row, area);
    }
    rule.evenOut(moments[w]);
    float[] scale = widths[w].filter().scale();
    RowTests tests = new RowTests(w, rule, scale, moments[w], squares[w], start, n);
    ChannelMoments here = moments[w].moments();
    if (mirror != null && rule.canReach(leastCalled[w], here, work, n)) {
      rule.squares(here, squares[w], mirrored, work, 0, n);
      mirror.includeAbove(tests.mirrored(opposite[w], mirrored), bound, leastCalled[w], false);
    } else {
      rule.squares(here, squares[w], 0, n);
    }
    return tests;
  }
}
