package railglow.board.compare;

import railglow.thermal.FirstOrderResponse;

/**
 * How a run pulsed: swings of two runs are alike only where this is.
 *
 * @param coded whether the pulses came in a coded order
 */
public record PulseKind(double periodSeconds, boolean coded) {
  private static final double SAME_PERIOD = 0.01;

  /** Whether a place swings alike under both. */
  public boolean isLike(PulseKind other) {
    return coded == other.coded && Math.abs(periodSeconds / other.periodSeconds - 1) <= SAME_PERIOD;
  }

  /** Share of its settled rise by which a body of first order swings. */
  double swingShare(double timeConstantSeconds) {
    return (coded
            ? FirstOrderResponse.coded(timeConstantSeconds, 0, periodSeconds)
            : FirstOrderResponse.of(timeConstantSeconds, periodSeconds))
        .size();
  }
}
