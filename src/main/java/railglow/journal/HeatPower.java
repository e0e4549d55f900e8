package railglow.journal;

import java.util.List;

/**
 * The heat in view as power, from the map of heat sources.
 *
 * @param seenWatts all power around the places while ON; NaN where there is no map
 * @param errorWatts standard deviation of it: pixel noise and what is not known of the board
 * @param resolutionMillimetres two places farther apart than this are told apart
 * @param places that can be told apart, strongest first
 */
public record HeatPower(
    double seenWatts, double errorWatts, double resolutionMillimetres, List<Place> places) {
  /** Where no map could be made: nothing found, no registration, or rises in counts. */
  public static final HeatPower NONE = new HeatPower(Double.NaN, Double.NaN, Double.NaN, List.of());

  public HeatPower {
    places = List.copyOf(places);
  }

  /**
   * One place where heat arises.
   *
   * @param part whose outline holds the place, or nearly; empty when there is none
   * @param column of the picture
   * @param row of the picture
   */
  public record Place(String part, double column, double row, double watts) {}

  public boolean isKnown() {
    return !Double.isNaN(seenWatts);
  }
}
