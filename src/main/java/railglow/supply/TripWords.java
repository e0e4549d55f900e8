package railglow.supply;

import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;
import railglow.observed.Trip;

/** Trips as words for the operator. */
final class TripWords {
  private TripWords() {}

  static String of(Set<Trip> trips) {
    return trips.stream()
        .sorted()
        .map(trip -> trip.name().toLowerCase(Locale.ROOT).replace("over", "over-"))
        .collect(Collectors.joining(" and "));
  }
}
