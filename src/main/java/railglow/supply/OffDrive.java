package railglow.supply;

import java.util.Set;
import java.util.function.BooleanSupplier;
import railglow.observed.OutputState;
import railglow.observed.SupplyReading;
import railglow.observed.Trip;
import railglow.time.MonotonicClock;

/**
 * One attempt after the other to bring the output off and to prove it: off is always the first
 * exchange; then the link is brought back in step if need be, the switch read back, and volts and
 * amperes looked at.
 */
final class OffDrive {
  /** An output that stays on for so long in spite of off is turned down as well. */
  private static final long LOWER_AFTER_NANOS = 1_000_000_000;

  private static final String TURNED_DOWN =
      "the supply did not obey off and was turned down to its lowest level, where its word alone"
          + " proves nothing";

  private final Supply supply;
  private final KeeperReports reports;
  private final MonotonicClock clock;
  private final OffProof proof;
  private final ReadingDraft draft = new ReadingDraft();
  private Set<Trip> lastTrips = Set.of();
  private boolean disobeyed;
  private long disobeyedSinceNanos;
  private boolean lowered;

  OffDrive(Supply supply, KeeperReports reports, MonotonicClock clock) {
    this.supply = supply;
    this.reports = reports;
    this.clock = clock;
    this.proof = new OffProof(supply.descriptor().channel(supply.channel()));
  }

  /**
   * @param setVolts the level the supply is set to; NaN when not known
   * @param abandon looked at after every exchange; when it says so the attempt ends without a proof
   * @return whether the output is proven off
   * @throws SupplyException when an exchange failed; nothing is proven then
   */
  boolean attempt(double setVolts, BooleanSupplier abandon) throws SupplyException {
    SwitchState said = off();
    if (abandon.getAsBoolean()) {
      return false;
    }
    if (said == SwitchState.NOT_TOLD) {
      said = supply.readSwitch();
      if (abandon.getAsBoolean()) {
        return false;
      }
    }
    SupplyReading reading = read(abandon);
    if (reading == null) {
      return false;
    }
    if (draft.outputSwitch() != SwitchState.NOT_TOLD) {
      said = draft.outputSwitch();
    }
    return judged(said, reading, proof.doubt(said, reading, setVolts));
  }

  private boolean judged(SwitchState said, SupplyReading reading, String doubt)
      throws SupplyException {
    long now = clock.nanos();
    boolean proven = doubt.isEmpty() && !lowered;
    if (proven) {
      disobeyed = false;
      reports.state(OutputState.PROVEN_OFF, "", now);
      return true;
    }
    reports.state(
        said == SwitchState.ON ? OutputState.ON : OutputState.UNKNOWN,
        doubt.isEmpty() ? TURNED_DOWN : doubt,
        now);
    if (said != SwitchState.ON && !proof.currentFlows(reading)) {
      disobeyed = false;
    } else if (!disobeyed) {
      disobeyed = true;
      disobeyedSinceNanos = now;
    } else if (!lowered && now - disobeyedSinceNanos >= LOWER_AFTER_NANOS) {
      lower();
    }
    return false;
  }

  /** Trips in the last whole reading. */
  Set<Trip> lastTrips() {
    return lastTrips;
  }

  private SwitchState off() throws SupplyException {
    if (!supply.isOutOfStep()) {
      return supply.switchOff();
    }
    try {
      supply.switchOff();
    } catch (SupplyException e) {
      // The blind off could not even be sent; a new connection is next anyway.
      reports.state(OutputState.UNKNOWN, e.getMessage(), clock.nanos());
    }
    supply.resynchronise();
    return supply.switchOff();
  }

  private SupplyReading read(BooleanSupplier abandon) throws SupplyException {
    long startNanos = clock.nanos();
    draft.clear();
    for (int part = 0; part < supply.readingExchanges(); part++) {
      supply.readPart(part, draft);
      if (abandon.getAsBoolean()) {
        return null;
      }
    }
    SupplyReading reading =
        draft.finish(startNanos, clock.nanos(), supply.descriptor().tellsRegulation(), false);
    lastTrips = reading.trips();
    reports.reading(reading);
    return reading;
  }

  /** The second means against an output that does not obey: the lowest level and limit. */
  private void lower() throws SupplyException {
    lowered = true;
    ChannelAbility ability = supply.descriptor().channel(supply.channel());
    supply.setVolts(ability.volts().low());
    supply.setAmperes(ability.amperes().low());
  }
}
