package railglow.board;

import java.util.List;
import java.util.Optional;

/**
 * The one heat source, and the one part or place, that headline, next step and report all speak of.
 *
 * @param source index of the heat source
 * @param suspect that explains it; empty when no part is named
 * @param path what it is instead of a part; empty when it is none of the current's way
 */
public record Lead(int source, Optional<Suspect> suspect, Optional<HeatPath> path) {
  /**
   * @param suspects by rank
   * @return the path that leads, else the first suspect; the strongest source where there is
   *     neither
   */
  public static Lead of(List<Suspect> suspects, List<HeatPath> paths) {
    Optional<HeatPath> path = paths.stream().filter(HeatPath::leads).findFirst();
    if (path.isPresent()) {
      return new Lead(path.get().sourceIndex(), Optional.empty(), path);
    }
    return suspects.isEmpty()
        ? new Lead(0, Optional.empty(), Optional.empty())
        : new Lead(suspects.get(0).sourceIndex(), Optional.of(suspects.get(0)), Optional.empty());
  }
}
