package railglow.thermal;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;

/**
 * Takes found sources out of one look's means and makes the scores anew. Only pixels that the
 * newest source reaches through the widest filter can change, so only they are filtered and scored
 * again: the bits are those of doing it everywhere. Made for one look; not thread-safe.
 *
 * <p>Beside the scores it keeps those of the mirrored directions: nothing on a board cools while
 * the current flows, so these show how strongly other things than heat follow the pulse here.
 */
final class SourceSubtraction {
  private final int width;
  private final int height;
  private final MatchedFilter[] filters;
  private final ChannelMoments[] settled;
  private final ReducedCycle last;
  private final CommonParts.Removed removedI;
  private final CommonParts.Removed removedC;
  private final ScoreRule[] rules;
  private final ScoreField field;
  private final ScoreField mirror;
  private final ChannelMoments scratch;
  private final float[] filteredI;
  private final float[] filteredC;
  private final float[] modelI;
  private final float[] modelC;
  private int takenOut;
  private boolean mirrorIsWhole;

  /**
   * @param settled moments per width of all cycles but the last
   * @param last the last cycle as it was filtered for this look
   * @param rules per width; null where nothing could be scored
   * @param field scored without any source taken out
   * @param scratch overwritten
   */
  SourceSubtraction(
      int width,
      int height,
      MatchedFilter[] filters,
      ChannelMoments[] settled,
      ReducedCycle last,
      CommonParts.Removed removedI,
      CommonParts.Removed removedC,
      ScoreRule[] rules,
      ScoreField field,
      ChannelMoments scratch) {
    this.width = width;
    this.height = height;
    this.filters = filters;
    this.settled = settled;
    this.last = last;
    this.removedI = removedI;
    this.removedC = removedC;
    this.rules = rules;
    this.field = field;
    mirror = new ScoreField(width, height);
    this.scratch = scratch;
    filteredI = new float[width * height];
    filteredC = new float[width * height];
    modelI = new float[width * height];
    modelC = new float[width * height];
  }

  /**
   * Takes out of the mean planes, and of all that follows, what cleaning left around heat. To be
   * called before anything else, where something is called at all.
   */
  void clearLines(ChannelMoments plain, float[] mask, DelayArc widestArc, double bound) {
    List<Integer> called = new ArrayList<>();
    float[] scores = field.scores();
    for (int i = 0; i < scores.length; i++) {
      if (scores[i] >= bound) {
        called.add(i);
      }
    }
    int w = filters.length - 1;
    if (rules[w] == null || called.isEmpty()) {
      return;
    }
    Area whole = Area.whole(width, height);
    moments(w, whole);
    boolean[] heat = HeatRegion.around(called, scratch, widestArc, width, height);
    float[] residueI = LineResidue.of(plain.meanI(), heat, mask, width, height, removedI);
    float[] residueC = LineResidue.of(plain.meanC(), heat, mask, width, height, removedC);
    plain.subtractFromMeans(residueI, residueC, 0, width * height);
    for (int i = 0; i < modelI.length; i++) {
      modelI[i] += residueI[i];
      modelC[i] += residueC[i];
    }
    rescore(whole);
  }

  /** The list of the call before, and one more. */
  void without(List<Blob> blobs) {
    for (; takenOut < blobs.size(); takenOut++) {
      Blob blob = blobs.get(takenOut);
      blob.addTo(modelI, width, height, blob.inPhase());
      blob.addTo(modelC, width, height, blob.quadrature());
      Area area = blob.area(width, height).grown(widest(), width, height);
      rescore(mirrorIsWhole ? area : Area.whole(width, height));
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
    mirrorIsWhole = true;
    field.clear(area);
    mirror.clear(area);
    for (int w = 0; w < filters.length; w++) {
      if (rules[w] != null) {
        score(w, area);
      }
    }
  }

  private int widest() {
    int radius = 0;
    for (MatchedFilter filter : filters) {
      radius = Math.max(radius, filter.radius());
    }
    return radius;
  }

  /** The moments of a width with the last cycle, before anything is taken out. */
  private void moments(int w, Area area) {
    filters[w].apply(last.inPhase(), filteredI, removedI, area);
    filters[w].apply(last.quadrature(), filteredC, removedC, area);
    for (int row = area.top(); row < area.bottom(); row++) {
      int start = row * width;
      scratch.setTo(settled[w], filteredI, filteredC, start + area.left(), start + area.right());
    }
  }

  private void score(int w, Area area) {
    moments(w, area);
    filters[w].apply(modelI, filteredI, removedI, area);
    filters[w].apply(modelC, filteredC, removedC, area);
    for (int row = area.top(); row < area.bottom(); row++) {
      int start = row * width;
      scratch.subtractFromMeans(filteredI, filteredC, start + area.left(), start + area.right());
      rules[w].evenOut(scratch, start + area.left(), start + area.right());
    }
    field.include(w, scratch, filters[w].scale(), rules[w], area);
    mirror.include(w, scratch, filters[w].scale(), rules[w].mirrored(), area);
  }
}
