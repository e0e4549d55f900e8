package railglow.board;

import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * A part near a heat source, before it gets its rank.
 *
 * @param source index of the heat source
 * @param millimetres from the position to the outline, 0 inside
 * @param sigmas the same in standard deviations
 * @param share of the position's error that lies on the outline, 0 to 1
 * @param fromMiddle distance from the position to the part's middle, mm
 * @param area of the part the position is in, in words
 * @param behind the part through which the rail reaches it; empty when it is on the rail or not
 *     reached
 * @param netsKnown whether it is known which parts are on the rail at all
 * @param surface what to mind about the surface there, in words; empty when it radiates well
 * @param path why its heat is most likely that of the current's way; empty when it is not
 * @param late whether its heat comes clearly later than that of another source
 * @param heat clauses on its heat: K/W, order in time, true rise; said of the source's first part
 * @param place among the candidates of its source, from 0
 */
record Candidate(
    int source,
    Part part,
    Tier tier,
    double millimetres,
    double sigmas,
    double share,
    double fromMiddle,
    String area,
    boolean onRail,
    String behind,
    boolean netsKnown,
    String surface,
    String path,
    boolean late,
    String heat,
    int place) {
  private static final double LARGE_MILLIMETRES = 6.0;

  /** Classes of candidates, the likeliest first. */
  enum Tier {
    LIKELY,
    OTHER_SIDE,
    MAYBE_PATH,
    NEAR,
    /** Where a clip sits, or beside a trace. */
    AT_PATH,
    OFF_RAIL
  }

  double weight() {
    return share * PartKind.of(part.reference()).failureWeight();
  }

  Candidate at(int newPlace) {
    return new Candidate(
        source,
        part,
        tier,
        millimetres,
        sigmas,
        share,
        fromMiddle,
        area,
        onRail,
        behind,
        netsKnown,
        surface,
        path,
        late,
        heat,
        newPlace);
  }

  Suspect suspect(int rank, Board board, String railName) {
    return new Suspect(
        source,
        part.reference(),
        rank,
        millimetres,
        sigmas,
        onRail,
        where(board) + "; " + what(railName) + (place == 0 ? heat : "") + path + surface + ".");
  }

  private String where(Board board) {
    if (sigmas > SuspectRanking.TOUCH_SIGMAS) {
      return String.format(
          Locale.ROOT,
          "the heat's centre is %.1f mm (%.1f sigma) outside its outline%s",
          millimetres,
          sigmas,
          large() ? ", " + area + ", and heat from under so large a part comes out beside it" : "");
    }
    String on =
        millimetres > 0
            ? String.format(
                Locale.ROOT,
                "the heat's centre is %.2f mm (%.1f sigma) beside it, within its error",
                millimetres,
                sigmas)
            : "the heat's centre lies " + spot();
    return part.side() == board.viewed() ? on : on + ", but the part is on the other side";
  }

  /** A large part is located to its middle, edge or corner. */
  private String spot() {
    if (!large()) {
      return String.format(Locale.ROOT, "on it, %.1f mm from its middle", fromMiddle);
    }
    return String.format(
        Locale.ROOT, "under or in it, %s, %.1f mm from its middle", area, fromMiddle);
  }

  private boolean large() {
    return isLarge(part);
  }

  /** Whether heat from under it comes out beside it, and must be told by corners. */
  static boolean isLarge(Part part) {
    return Math.max(part.widthMillimetres(), part.heightMillimetres()) >= LARGE_MILLIMETRES;
  }

  private String what(String railName) {
    PartKind kind = PartKind.of(part.reference());
    String name = (part.value().isEmpty() ? "" : part.value() + " ") + kind.noun();
    if (railName.isEmpty()) {
      return name + ", and no rail was named to tell whether it carries the current";
    }
    if (!netsKnown) {
      return name + ", and without a netlist it is not known whether it is on " + railName;
    }
    if (!behind.isEmpty()) {
      return name + " behind " + behind + ", which carries current on from " + railName;
    }
    if (!onRail) {
      return name + " without a pad on " + railName + ", probably only warmed by its neighbour";
    }
    String described = name + " " + between(railName) + kind.frequency();
    return switch (tier) {
      case MAYBE_PATH -> described + ", which may only carry the current to the fault";
      case NEAR -> described + ", the nearest of that rail";
      default -> described;
    };
  }

  private String between(String railName) {
    Set<String> others =
        part.nets().stream()
            .filter(net -> !net.equalsIgnoreCase(railName))
            .collect(Collectors.toCollection(java.util.TreeSet::new));
    return others.size() == 1
        ? "between " + railName + " and " + others.iterator().next()
        : "with a pad on " + railName;
  }
}
