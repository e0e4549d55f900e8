package railglow.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import railglow.board.Board;
import railglow.board.Rail;
import railglow.board.RelatedCheck;
import railglow.board.readings.LimitProposal;
import railglow.board.readings.RailJudgement;
import railglow.board.readings.RailsAssessment;
import railglow.units.Quantity;
import railglow.units.Unit;

/** A board's readings and what follows from them, on one screen. */
final class RailsText {
  private RailsText() {}

  static List<String> judgements(Board board, RailsAssessment assessment) {
    List<String> lines = new ArrayList<>();
    lines.add("Board      " + board.name());
    lines.add("");
    lines.add(
        String.format(Locale.ROOT, "  %-10s %-12s %-20s %s", "rail", "reading", "is", "how sure"));
    for (RailJudgement judgement : assessment.judgements()) {
      boolean read = !Double.isNaN(judgement.railOhms());
      lines.add(
          String.format(
                  Locale.ROOT,
                  "  %-10s %-12s %-20s %s",
                  judgement.rail(),
                  read ? ohms(judgement.railOhms()) : "-",
                  read ? judgement.state().words() : "not read",
                  read ? judgement.sureness().name().toLowerCase(Locale.ROOT) : "")
              .stripTrailing());
    }
    lines.add("");
    for (RailJudgement judgement : assessment.judgements()) {
      if (judgement.state().wrong() || judgement.state() == RailJudgement.State.SEMICONDUCTOR) {
        Summary.wrap(lines, "Wrong      ", judgement.rail() + " " + judgement.reason() + ".");
      }
    }
    Summary.wrap(
        lines, "Hunt first ", assessment.huntFirst().orElse("none") + ". " + assessment.reason());
    readToo(
        lines,
        board,
        assessment.judgements().stream()
            .filter(judgement -> judgement.state().wrong())
            .map(RailJudgement::rail)
            .toList());
    assessment.notes().forEach(note -> Summary.wrap(lines, "Note       ", note + "."));
    PlanText.gaps(lines, board);
    return lines;
  }

  /** What the board file wants read when these rails or parts are wrong. */
  static void readToo(List<String> lines, Board board, List<String> wrong) {
    for (RelatedCheck check : board.care().checksFor(wrong)) {
      Summary.wrap(
          lines, "Read too   ", String.join(", ", check.read()) + ": " + check.why() + ".");
    }
  }

  static List<String> proposal(Rail rail, LimitProposal proposal, String boardName) {
    List<String> lines = new ArrayList<>();
    lines.add("");
    Summary.wrap(
        lines,
        "Proposal   ",
        "level "
            + Quantity.format(proposal.volts(), Unit.VOLT)
            + ", current limit "
            + Quantity.format(proposal.amperes(), Unit.AMPERE)
            + "; at worst "
            + Quantity.format(proposal.worstWatts(), Unit.WATT)
            + ".");
    proposal.reasons().forEach(reason -> Summary.wrap(lines, "           ", reason + "."));
    proposal.cautions().forEach(caution -> Summary.wrap(lines, "Mind       ", caution + "."));
    lines.add(
        String.format(
            Locale.ROOT,
            "Next       railglow plan --board %s --rail %s --level \"%s\" --current-limit \"%s\"",
            boardName,
            rail.name(),
            Quantity.format(proposal.volts(), Unit.VOLT),
            Quantity.format(proposal.amperes(), Unit.AMPERE)));
    return lines;
  }

  private static String ohms(double value) {
    return Double.isInfinite(value) ? "open" : Quantity.format(value, Unit.OHM);
  }
}
