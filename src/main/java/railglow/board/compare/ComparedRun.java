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
 * @param sources strongest first, in kelvin
 * @param watts at the board in the ON halves; NaN when not measured
 * @param upperLimitKelvin the swing that would have been seen; NaN when not known
 * @param pulses how it pulsed
 * @param registration of this run's camera place; empty when the pictures share their pixels
 */
public record ComparedRun(
    String label,
    List<HeatSource> sources,
    double watts,
    double upperLimitKelvin,
    PulseKind pulses,
    Optional<Registration> registration) {
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
}
