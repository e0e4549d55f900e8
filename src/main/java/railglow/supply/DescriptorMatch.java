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

  /** All that fit equally well, in the order given; empty when none does. */
  public static List<SupplyDescriptor> equallyGood(String identity, List<SupplyDescriptor> known) {
    long most = best(identity, known).map(DescriptorMatch::saying).orElse(0L);
    return known.stream()
        .filter(descriptor -> descriptor.identity().isFoundIn(identity))
        .filter(descriptor -> saying(descriptor) == most)
        .toList();
  }

  /** Whether its identity names no maker or model, so that its figures are those of no supply. */
  public static boolean isGeneric(SupplyDescriptor descriptor) {
    return saying(descriptor) == 0;
  }

  private static long saying(SupplyDescriptor descriptor) {
    return descriptor.identity().text().chars().filter(Character::isLetterOrDigit).count();
  }
}
