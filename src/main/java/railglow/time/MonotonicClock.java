package railglow.time;

/**
 * A clock that never goes back. Its values have no relation to the wall clock and may be negative;
 * only differences mean anything.
 */
@FunctionalInterface
public interface MonotonicClock {
  long nanos();
}
