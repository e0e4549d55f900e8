package railglow.thermal;

import java.util.ArrayList;
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
  private final ScoreRule[] rules;
  private final ScoreField field;
  private final ChannelMoments scratch;
  private final double bound;
  private final Area whole;
  private final float[] squares;
  private ScoreField mirror;
  private float[] mirrored;
  private float[] work;
  private float[] filteredI;
  private float[] filteredC;
  private float[] modelI;
  private float[] modelC;
  private int takenOut;

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
    squares = new float[width * height];
    field.clear(whole);
  }

  /** Whether anything is called. */
  boolean callsAny() {
    for (int w = 0; w < widths.length; w++) {
      if (rules[w] != null && callsAny(w)) {
        return true;
      }
    }
    return false;
  }

  private boolean callsAny(int w) {
    float least = rules[w].squareBelow(bound);
    for (int row = 0; row < height; row++) {
      measure(w, row);
      if (called(row, w, least) >= bound) {
        return true;
      }
    }
    return false;
  }

  /**
   * Scores every pixel. As soon as one is called the others are scored only as far as they are
   * called too: what cleaning left around heat is in all of them, and goes first.
   *
   * @param clearsLines whether {@link #clearLines} follows
   */
  void scoreAll(boolean clearsLines) {
    boolean any = false;
    for (int w = 0; w < widths.length; w++) {
      float least = rules[w] == null ? 0 : rules[w].squareBelow(bound);
      for (int row = 0; row < height && rules[w] != null; row++) {
        measure(w, row);
        float most = any && clearsLines ? called(row, w, least) : scored(row, w, whole);
        any |= most >= bound;
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
    widths[w].momentsInto(scratch, 0, width * height);
    boolean[] heat = HeatRegion.around(called, scratch, widestArc, width, height);
    float[] residueI = LineResidue.of(plain.meanI(), heat, mask, width, height, removedI);
    float[] residueC = LineResidue.of(plain.meanC(), heat, mask, width, height, removedC);
    plain.subtractFromMeans(residueI, residueC, 0, width * height);
    modelI = residueI;
    modelC = residueC;
    rescore(whole);
  }

  /** The list of the call before, and one more. */
  void without(List<Blob> blobs) {
    modelI = modelI == null ? new float[width * height] : modelI;
    modelC = modelC == null ? new float[width * height] : modelC;
    for (; takenOut < blobs.size(); takenOut++) {
      Blob blob = blobs.get(takenOut);
      blob.addTo(modelI, width, height, blob.inPhase());
      blob.addTo(modelC, width, height, blob.quadrature());
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
    if (mirror == null) {
      mirror = new ScoreField(width, height);
      mirrored = new float[width * height];
      work = new float[width * height];
      filteredI = new float[width * height];
      filteredC = new float[width * height];
    }
    field.clear(area);
    mirror.clear(area);
    for (int w = 0; w < widths.length; w++) {
      if (rules[w] != null) {
        rescore(w, area);
      }
    }
  }

  private void rescore(int w, Area area) {
    MatchedFilter filter = widths[w].filter();
    filter.apply(modelI, filteredI, removedI, area);
    filter.apply(modelC, filteredC, removedC, area);
    ScoreRule opposite = rules[w].mirrored();
    float least = opposite.squareBelow(bound);
    for (int row = area.top(); row < area.bottom(); row++) {
      measureWithout(w, row, area);
      scored(row, w, area);
      int start = row * width;
      mirror.includeAbove(
          least,
          w,
          scratch,
          filter.scale(),
          opposite,
          mirrored,
          start + area.left(),
          start + area.right());
    }
  }

  private int widest() {
    int radius = 0;
    for (WidthPlanes each : widths) {
      radius = Math.max(radius, each.filter().radius());
    }
    return radius;
  }

  /** Moments and squares of a row. */
  private void measure(int w, int row) {
    int from = row * width;
    widths[w].momentsInto(scratch, from, from + width);
    rules[w].evenOut(scratch, from, from + width);
    rules[w].squares(scratch, squares, from, from + width);
  }

  /** The same without what was taken out, and of the mirrored directions too. */
  private void measureWithout(int w, int row, Area area) {
    int from = row * width + area.left();
    int to = row * width + area.right();
    widths[w].momentsInto(scratch, from, to);
    scratch.subtractFromMeans(filteredI, filteredC, from, to);
    rules[w].evenOut(scratch, from, to);
    rules[w].squares(scratch, squares, mirrored, work, from, to);
  }

  private float scored(int row, int w, Area area) {
    int from = row * width + area.left();
    int to = row * width + area.right();
    return field.include(w, scratch, widths[w].filter().scale(), rules[w], squares, from, to);
  }

  private float called(int row, int w, float least) {
    int from = row * width;
    float[] scale = widths[w].filter().scale();
    return field.includeAbove(least, w, scratch, scale, rules[w], squares, from, from + width);
  }
}
