package railglow.board;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import railglow.board.readings.RailJudgement;
import railglow.units.Quantity;
import railglow.units.Unit;

/**
 * How a case ends, and whether the readings bear it out. It never claims more than they do.
 *
 * @param kind what is decided
 * @param rail the rail it is about
 * @param part the part it is about; empty when none
 * @param confirmed whether a reading taken since proves it
 * @param statement one or two sentences for the owner
 * @param evidence runs and readings it rests on
 */
public record CaseVerdict(
    Kind kind,
    String rail,
    String part,
    boolean confirmed,
    String statement,
    List<String> evidence) {
  /** What can be decided. */
  public enum Kind {
    REPLACE_PART,
    REMOVE_SHORT,
    NOT_ECONOMIC,
    NO_FAULT_FOUND
  }

  public CaseVerdict {
    evidence = List.copyOf(evidence);
  }

  /**
   * @param now the rail's latest judgement
   * @param part empty when the verdict is about none
   * @throws IllegalArgumentException with one sentence when the verdict contradicts the readings or
   *     lacks what it needs
   */
  public static CaseVerdict of(
      Kind kind, RailJudgement now, String part, Board board, List<String> evidence) {
    if (kind == Kind.REPLACE_PART && part.isEmpty()) {
      throw new IllegalArgumentException("the verdict 'replace-part' needs the part's reference");
    }
    if (!part.isEmpty() && !board.parts().isEmpty() && board.part(part).isEmpty()) {
      throw new IllegalArgumentException(
          "'" + part + "' is no part of " + board.name() + "'s placement");
    }
    boolean read = !Double.isNaN(now.railOhms());
    boolean normal = now.state() == RailJudgement.State.NORMAL;
    if (kind == Kind.NO_FAULT_FOUND && now.state().wrong()) {
      throw new IllegalArgumentException(
          "'no-fault-found' contradicts the reading: " + now.rail() + " " + now.reason());
    }
    if (kind == Kind.NO_FAULT_FOUND && evidence.isEmpty() && !read) {
      throw new IllegalArgumentException(
          "'no-fault-found' needs a reading of the rail or a run that found nothing");
    }
    boolean confirmed =
        switch (kind) {
          case REPLACE_PART, REMOVE_SHORT, NO_FAULT_FOUND -> read && normal;
          case NOT_ECONOMIC -> read && now.state().wrong();
        };
    return new CaseVerdict(
        kind, now.rail(), part, confirmed, statement(kind, now, part, read, confirmed), evidence);
  }

  private static String statement(
      Kind kind, RailJudgement now, String part, boolean read, boolean confirmed) {
    String reading =
        read
            ? now.rail() + " now reads " + Quantity.format(now.railOhms(), Unit.OHM)
            : now.rail() + " was not read since";
    String proof =
        switch (now.state()) {
          case NORMAL -> reading + ", which is normal by " + now.basis().words();
          default ->
              read ? reading + ", which is not normal (" + now.state().words() + ")" : reading;
        };
    String decision =
        switch (kind) {
          case REPLACE_PART -> part + " is the fault and is to be replaced";
          case REMOVE_SHORT ->
              part.isEmpty()
                  ? "The short is to be removed"
                  : "The short at " + part + " is to be removed";
          case NOT_ECONOMIC -> "The repair is not economic";
          case NO_FAULT_FOUND -> "No fault was found on " + now.rail();
        };
    return decision
        + ". "
        + Character.toUpperCase(proof.charAt(0))
        + proof.substring(1)
        + (confirmed ? ": confirmed." : ": not confirmed yet.");
  }

  /** The file's lines; each value quoted so that it is read back as text. */
  public String yaml(String closedAt) {
    StringBuilder text = new StringBuilder();
    line(text, "verdict", kind.name().toLowerCase(Locale.ROOT).replace('_', '-'));
    line(text, "rail", rail);
    Optional.of(part).filter(p -> !p.isEmpty()).ifPresent(p -> line(text, "part", p));
    line(text, "confirmed", confirmed ? "yes" : "no");
    line(text, "statement", statement);
    line(text, "closed", closedAt);
    text.append("evidence:").append(evidence.isEmpty() ? " []\n" : "\n");
    evidence.forEach(item -> text.append("  - ").append(quoted(item)).append('\n'));
    return text.toString();
  }

  private static void line(StringBuilder text, String key, String value) {
    text.append(key).append(": ").append(quoted(value)).append('\n');
  }

  private static String quoted(String value) {
    return "'" + value.replace("'", "''").replaceAll("\\s+", " ") + "'";
  }
}
