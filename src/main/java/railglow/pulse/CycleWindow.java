package railglow.pulse;

/**
 * The five bounds of one cycle on one clock: Q1 (OFF) from start to on, Q2 from on to middle, Q3
 * from middle to off, Q4 (OFF) from off to end.
 *
 * @param cycle from 0
 * @param inverted whether ON and OFF are exchanged: on Q1 and Q4, off Q2 and Q3 (coded pulses)
 */
public record CycleWindow(
    int cycle,
    long startNanos,
    long onNanos,
    long middleNanos,
    long offNanos,
    long endNanos,
    boolean inverted) {
  public CycleWindow {
    if (!(startNanos < onNanos
        && onNanos < middleNanos
        && middleNanos < offNanos
        && offNanos < endNanos)) {
      throw new IllegalArgumentException("the bounds of cycle " + cycle + " are out of order");
    }
  }

  /** OFF ON ON OFF. */
  public CycleWindow(
      int cycle, long startNanos, long onNanos, long middleNanos, long offNanos, long endNanos) {
    this(cycle, startNanos, onNanos, middleNanos, offNanos, endNanos, false);
  }

  /** Which quarter a time lies in: 1 to 4; 0 outside the cycle. */
  public int quarterAt(long nanos) {
    if (nanos < startNanos || nanos >= endNanos) {
      return 0;
    }
    return nanos < onNanos ? 1 : nanos < middleNanos ? 2 : nanos < offNanos ? 3 : 4;
  }

  /** The same cycle on a clock whose zero lies elsewhere. */
  public CycleWindow shifted(long nanos) {
    return new CycleWindow(
        cycle,
        startNanos + nanos,
        onNanos + nanos,
        middleNanos + nanos,
        offNanos + nanos,
        endNanos + nanos,
        inverted);
  }
}
