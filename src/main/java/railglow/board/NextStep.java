package railglow.board;

import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import railglow.board.imports.Pad;
import railglow.units.Interval;
import railglow.units.Quantity;
import railglow.units.Unit;

/** What to do after a run, and which reading would confirm it. Pure. */
public final class NextStep {
  private NextStep() {}

  /** Below this a clip's contact is no longer small beside the rail; common practice, no source. */
  private static final double CLIP_WARMS_BELOW_OHMS = 0.5;

  /**
   * @param railName the injected rail; empty when none was named
   * @param railOhms what the rail reads now; NaN when not measured
   * @return one or two sentences, never empty
   */
  public static String text(Board board, String railName, Ranking ranking, double railOhms) {
    List<Suspect> suspects = ranking.suspects();
    Lead lead = ranking.lead();
    if (lead.path().isPresent()) {
      return path(lead.path().get(), railName);
    }
    if (suspects.isEmpty()) {
      return withoutSuspects(board);
    }
    Suspect first = suspects.get(0);
    if (PartKind.of(first.part()).oftenPath()) {
      return first.part()
          + " may only carry the current: inject at another point of "
          + railOr(railName)
          + " and compare; what stays hot at both points is the fault.";
    }
    String confirmed = confirmation(board.rail(railName), railName, railOhms);
    String text = upperFirst(lift(board, railName, first.part())) + "; " + confirmed + ".";
    Optional<Suspect> second =
        suspects.stream()
            .skip(1)
            .filter(s -> s.distanceSigmas() <= SuspectRanking.TOUCH_SIGMAS)
            .filter(
                s -> ranking.paths().stream().noneMatch(p -> p.sourceIndex() == s.sourceIndex()))
            .filter(s -> s.onRail() && !PartKind.of(s.part()).oftenPath())
            .findFirst();
    return second
            .map(s -> text + " If it does not, " + lift(board, railName, s.part()) + " next.")
            .orElse(text)
        + clip(ranking.paths(), railOhms);
  }

  private static String path(HeatPath path, String railName) {
    String other =
        switch (path.kind()) {
          case CLIP -> "clip on at another point of " + railOr(railName);
          case TRACE -> "inject at another point of " + railOr(railName) + ", beyond an end of it,";
        };
    return upperFirst(path.reason())
        + ". To be sure "
        + other
        + " and compare; what stays hot at both points is the fault.";
  }

  /**
   * What else to read, by the board file.
   *
   * @param wrong rails and parts that were found wrong
   * @return sentences, each with a blank before it; empty when the board file names nothing
   */
  public static String readToo(Board board, Collection<String> wrong) {
    return board.care().checksFor(wrong).stream()
        .map(check -> " Read " + and(check.read()) + " too: " + check.why() + ".")
        .collect(Collectors.joining());
  }

  private static String and(List<String> rails) {
    int last = rails.size() - 1;
    return last < 1
        ? rails.get(0)
        : String.join(", ", rails.subList(0, last)) + " and " + rails.get(last);
  }

  /** A contact of some tens of milliohm takes as much of the current's heat as a short does. */
  private static String clip(List<HeatPath> paths, double railOhms) {
    Optional<HeatPath> known =
        paths.stream().filter(path -> path.kind() == HeatPath.Kind.CLIP).findFirst();
    if (known.isPresent()) {
      return " The heat " + known.get().place() + " is most likely its contact.";
    }
    return railOhms < CLIP_WARMS_BELOW_OHMS
        ? " With so low a rail the clip warms too: what moves when you move it is not the fault."
        : "";
  }

  private static String withoutSuspects(Board board) {
    if (board.parts().isEmpty()) {
      return "Find the heat's place on the board by the difference picture; with a placement file"
          + " the part would be named.";
    }
    if (board.registration().isEmpty()) {
      return "Find the heat's place on the board by the difference picture; with four registration"
          + " points or more in the board file the part would be named.";
    }
    return "No part of the placement lies at the heat: look there for a bridge, a damaged trace or a"
        + " part that is not in the placement.";
  }

  private static String lift(Board board, String railName, String reference) {
    PartKind kind = PartKind.of(reference);
    if (kind == PartKind.CHIP || kind == PartKind.MODULE) {
      String pins =
          board.padsOn(railName).stream()
              .filter(pad -> pad.reference().equals(reference) && !pad.pin().isEmpty())
              .map(Pad::pin)
              .distinct()
              .limit(4)
              .collect(Collectors.joining(", "));
      return pins.isEmpty()
          ? "take " + reference + " off " + railOr(railName)
          : "free " + reference + " from " + railName + " (pin " + pins + ") or remove it";
    }
    return "lift " + reference;
  }

  private static String confirmation(Optional<Rail> rail, String railName, double railOhms) {
    Optional<Interval> normal = rail.flatMap(Rail::normalOhms);
    if (normal.isPresent()) {
      return railName
          + " should then read "
          + Quantity.format(normal.get().low(), Unit.OHM)
          + " or more";
    }
    return Double.isNaN(railOhms)
        ? railOr(railName) + " should then read clearly higher than before"
        : railOr(railName)
            + " should then read clearly more than the "
            + Quantity.format(railOhms, Unit.OHM)
            + " of now";
  }

  private static String railOr(String railName) {
    return railName.isEmpty() ? "the rail" : railName;
  }

  private static String upperFirst(String text) {
    return Character.toUpperCase(text.charAt(0)) + text.substring(1);
  }
}
