package railglow.supply;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** Which descriptor fits what an instrument says it is. Pure. */
public final class DescriptorMatch {
  private DescriptorMatch() {}

  /**
   * The fitting descriptor that says most: the one whose pattern holds the most letters and digits,
   * so that one made for a model comes before one made for many.
   */
  public static Optional<SupplyDescriptor> best(String identity, List<SupplyDescriptor> known) {
    return known.stream()
        .filter(descriptor -> descriptor.identity().isFoundIn(identity))
        .max(Comparator.comparingLong(DescriptorMatch::saying));
  }

  private static long saying(SupplyDescriptor descriptor) {
    return descriptor.identity().text().chars().filter(Character::isLetterOrDigit).count();
  }
}
