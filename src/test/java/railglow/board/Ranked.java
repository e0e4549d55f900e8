package railglow.board;

import java.util.List;
import railglow.thermal.HeatSource;

/** The suspects of some heat, and what is said of them, where no heat is only the current's way. */
public final class Ranked {
  private Ranked() {}

  public static List<Suspect> suspects(Board board, String railName, List<HeatSource> sources) {
    return suspects(board, railName, sources, HeatFacts.NONE);
  }

  static List<Suspect> suspects(
      Board board, String railName, List<HeatSource> sources, HeatFacts facts) {
    return SuspectRanking.of(board, railName, sources, facts).suspects();
  }

  public static String nextStep(
      Board board, String railName, List<Suspect> suspects, double railOhms) {
    return NextStep.text(board, railName, new Ranking(suspects, List.of()), railOhms);
  }
}
