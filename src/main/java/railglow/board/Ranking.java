package railglow.board;

import java.util.List;

/**
 * What can explain a run's heat.
 *
 * @param suspects parts, by rank
 * @param paths places of the current's way, in the sources' order; at most one of them leads
 */
public record Ranking(List<Suspect> suspects, List<HeatPath> paths) {
  public static final Ranking NOTHING = new Ranking(List.of(), List.of());

  public Ranking {
    suspects = List.copyOf(suspects);
    paths = List.copyOf(paths);
  }

  public Lead lead() {
    return Lead.of(suspects, paths);
  }
}
