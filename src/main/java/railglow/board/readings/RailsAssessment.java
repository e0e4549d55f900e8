package railglow.board.readings;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import railglow.board.Board;
import railglow.board.Rail;
import railglow.board.readings.RailJudgement.State;

/**
 * Which rails are wrong and which to hunt first. Pure.
 *
 * @param judgements one per rail of the board, in its order
 * @param huntFirst the rail to hunt first; empty when no rail shows a fault that heat can find
 * @param reason one or two plain sentences about that choice
 * @param notes readings that belong to no rail, and what else to read
 */
public record RailsAssessment(
    List<RailJudgement> judgements, Optional<String> huntFirst, String reason, List<String> notes) {
  public RailsAssessment {
    judgements = List.copyOf(judgements);
    notes = List.copyOf(notes);
  }

  public static RailsAssessment of(
      Board board, List<RailReading> readings, Optional<KnownGood> good) {
    List<RailJudgement> judgements = new ArrayList<>();
    List<String> notes = new ArrayList<>();
    for (Rail rail : board.rails()) {
      judgements.add(
          RailJudge.judge(
              rail,
              readings.stream().filter(r -> r.rail().equalsIgnoreCase(rail.name())).toList(),
              good));
    }
    readings.stream()
        .map(RailReading::rail)
        .distinct()
        .filter(name -> board.rail(name).isEmpty())
        .forEach(
            name -> notes.add("a reading is of '" + name + "', which is no rail of this board"));
    List<RailJudgement> order =
        judgements.stream()
            .filter(judgement -> judgement.state().huntable())
            .sorted(ORDER)
            .toList();
    if (order.isEmpty()) {
      return new RailsAssessment(judgements, Optional.empty(), nothing(judgements), notes);
    }
    RailJudgement first = order.get(0);
    return new RailsAssessment(judgements, Optional.of(first.rail()), reason(first, order), notes);
  }

  /** Surest first; a dead short before a leak; then the farthest from normal. */
  private static final Comparator<RailJudgement> ORDER =
      Comparator.comparing(RailJudgement::sureness)
          .thenComparing(judgement -> judgement.state() == State.DEAD_SHORT ? 0 : 1)
          .thenComparingDouble(
              judgement -> Double.isNaN(judgement.shareOfNormal()) ? 1 : judgement.shareOfNormal())
          .thenComparingDouble(RailJudgement::railOhms);

  private static String reason(RailJudgement first, List<RailJudgement> order) {
    StringBuilder text =
        new StringBuilder(first.rail() + " " + first.reason() + ", " + surely(first) + ".");
    if (order.size() > 1) {
      RailJudgement second = order.get(1);
      text.append(
          first.state() == State.DEAD_SHORT && second.state() != State.DEAD_SHORT
              ? " A dead short shows at once, so it comes before "
              : " It is surer or farther from normal than ");
      text.append(second.rail()).append("; read the other rails again once it is mended.");
    }
    return text.toString();
  }

  private static String surely(RailJudgement judgement) {
    return switch (judgement.sureness()) {
      case CLEAR -> "clearly outside the reading's error";
      case LIKELY -> "outside the reading's error";
      case DOUBTFUL -> "but within the reading's error or what boards differ by";
    };
  }

  private static String nothing(List<RailJudgement> judgements) {
    if (judgements.stream().allMatch(judgement -> Double.isNaN(judgement.railOhms()))) {
      return "No rail was read.";
    }
    Optional<RailJudgement> path =
        judgements.stream().filter(j -> j.state() == State.SEMICONDUCTOR).findFirst();
    if (path.isPresent()) {
      return path.get().rail() + " " + path.get().reason() + ".";
    }
    return "No rail that was read shows a fault that an injection can find by its heat.";
  }
}
