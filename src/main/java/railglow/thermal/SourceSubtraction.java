package railglow.thermal;

import java.util.List;

/**
 * Takes found sources out of one look's means and makes the scores anew. Only pixels that the
 * newest source reaches through the widest filter can change, so only they are filtered and scored
 * again: the bits are those of doing it everywhere. Made for one look; not thread-safe.
 */
final class SourceSubtraction implements SourceSearch.Rescoring {
  private final int width;
  private final int height;
  private final MatchedFilter[] filters;
  private final ChannelMoments[] settled;
  private final ReducedCycle last;
  private final CommonParts.Removed removedI;
  private final CommonParts.Removed removedC;
  private final ScoreRule[] rules;
  private final ScoreField field;
  private final ChannelMoments scratch;
  private final float[] filteredI;
  private final float[] filteredC;
  private final float[] modelI;
  private final float[] modelC;
  private int takenOut;

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
    this.scratch = scratch;
    filteredI = new float[width * height];
    filteredC = new float[width * height];
    modelI = new float[width * height];
    modelC = new float[width * height];
  }

  /** The list of the call before, and one more. */
  @Override
  public void without(List<Blob> blobs) {
    for (; takenOut < blobs.size(); takenOut++) {
      Blob blob = blobs.get(takenOut);
      blob.addTo(modelI, width, height, blob.inPhase());
      blob.addTo(modelC, width, height, blob.quadrature());
      Area area = blob.area(width, height).grown(widest(), width, height);
      field.clear(area);
      for (int w = 0; w < filters.length; w++) {
        if (rules[w] != null) {
          score(w, area);
        }
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

  private void score(int w, Area area) {
    filters[w].apply(last.inPhase(), filteredI, removedI, area);
    filters[w].apply(last.quadrature(), filteredC, removedC, area);
    for (int row = area.top(); row < area.bottom(); row++) {
      int start = row * width;
      scratch.setTo(settled[w], filteredI, filteredC, start + area.left(), start + area.right());
    }
    filters[w].apply(modelI, filteredI, removedI, area);
    filters[w].apply(modelC, filteredC, removedC, area);
    for (int row = area.top(); row < area.bottom(); row++) {
      int start = row * width;
      scratch.subtractFromMeans(filteredI, filteredC, start + area.left(), start + area.right());
    }
    field.include(w, scratch, filters[w].scale(), rules[w], area);
  }
}
