package railglow.board.compare;

import java.util.List;
import java.util.Optional;
import railglow.board.geometry.BoardPosition;
import railglow.board.geometry.Registration;
import railglow.thermal.HeatSource;

/**
 * One of two runs that are compared.
 *
 * @param label what the user calls it, for example "J1"
 * @param sources strongest first, rises in kelvin
 * @param watts at the board in the ON halves; NaN when not measured
 * @param upperLimitKelvin what would have been seen; NaN when not known
 * @param registration of this run's camera place; empty when the pictures share their pixels
 */
public record ComparedRun(
    String label,
    List<HeatSource> sources,
    double watts,
    double upperLimitKelvin,
    Optional<Registration> registration) {
  /** Standard deviations in half a 95 % interval. */
  private static final double HALF_95 = 1.959963985;

  /**
   * Standard deviation with which a rise per watt is repeated by another run of the same part: the
   * power's error, the edges' times, the fit of a body that is no single lag. Measured on the
   * simulated bench, where one part at two injection points gave 4.47 and 4.04 K/W.
   */
  static final double REPEAT_SHARE = 0.05;

  public ComparedRun {
    sources = List.copyOf(sources);
  }

  /** Where a source is: millimetres when registered, else pixels. */
  BoardPosition place(HeatSource source) {
    return registration
        .map(
            map ->
                map.toBoard(
                    source.column(),
                    source.row(),
                    source.columnVariance(),
                    source.rowVariance(),
                    source.covariance()))
        .orElseGet(
            () ->
                new BoardPosition(
                    source.column(),
                    source.row(),
                    source.columnVariance(),
                    source.rowVariance(),
                    source.covariance()));
  }

  double perWatt(HeatSource source) {
    return source.riseKelvin() / watts;
  }

  /** Noise, and how well a rise per watt is repeated by another run at all. */
  double perWattSigma(HeatSource source) {
    double noise =
        (source.riseInterval95().high() - source.riseInterval95().low()) / (2 * HALF_95) / watts;
    return Math.hypot(noise, REPEAT_SHARE * perWatt(source));
  }
}
