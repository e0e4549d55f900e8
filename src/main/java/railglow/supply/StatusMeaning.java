package railglow.supply;

import java.util.Optional;
import railglow.observed.Trip;

/** What a bit or a word of a supply's status says. */
public enum StatusMeaning {
  CONSTANT_VOLTAGE(null),
  CONSTANT_CURRENT(null),
  UNREGULATED(null),
  OVERVOLTAGE_TRIP(Trip.OVERVOLTAGE),
  OVERCURRENT_TRIP(Trip.OVERCURRENT),
  OVERPOWER_TRIP(Trip.OVERPOWER),
  OVERTEMPERATURE_TRIP(Trip.OVERTEMPERATURE);

  private final Trip trip;

  StatusMeaning(Trip trip) {
    this.trip = trip;
  }

  /** The protection that has acted, if this is about one. */
  public Optional<Trip> trip() {
    return Optional.ofNullable(trip);
  }
}
