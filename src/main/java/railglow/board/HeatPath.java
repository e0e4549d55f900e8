package railglow.board;

/**
 * Heat that is most likely no fault but a place the current passes.
 *
 * @param sourceIndex which heat source of the run, from 0
 * @param kind what it is
 * @param leads whether it is what the run's headline is about: no part explains the heat better
 * @param place where, as it follows "Heat" in a sentence: "where the clip on C9 sits"
 * @param reason one plain sentence
 */
public record HeatPath(int sourceIndex, Kind kind, boolean leads, String place, String reason) {
  /** What carries the current there. */
  public enum Kind {
    /** The contact of a clip or probe. */
    CLIP,
    /** Copper: a long trace, a row of vias. */
    TRACE
  }

  HeatPath leading() {
    return new HeatPath(sourceIndex, kind, true, place, reason);
  }
}
