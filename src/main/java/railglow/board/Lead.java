package railglow.board;

import java.util.List;
import java.util.Optional;

/**
 * The one heat source, and the one part, that headline, next step and report all speak of.
 *
 * @param source index of the heat source
 * @param suspect that explains it; empty when no part is named
 */
public record Lead(int source, Optional<Suspect> suspect) {
  /**
   * @param suspects by rank
   * @return the first of them; the strongest source where there is none
   */
  public static Lead of(List<Suspect> suspects) {
    return suspects.isEmpty()
        ? new Lead(0, Optional.empty())
        : new Lead(suspects.get(0).sourceIndex(), Optional.of(suspects.get(0)));
  }
}
