package railglow.observed;

import java.util.Set;

/**
 * One look at the supply: volts and amperes at its sense terminals with its status.
 *
 * @param startNanos monotonic time before the query was sent
 * @param endNanos monotonic time after the reply was complete
 * @param volts may be NaN or huge when the supply could not measure; judged by the keeper
 * @param amperes as volts
 * @param outputOn what the supply says of its output switch
 */
public record SupplyReading(
    long startNanos,
    long endNanos,
    double volts,
    double amperes,
    boolean outputOn,
    Regulation regulation,
    Set<Trip> trips) {
  public SupplyReading {
    trips = Set.copyOf(trips);
  }

  public double watts() {
    return volts * amperes;
  }
}
