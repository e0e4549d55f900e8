package railglow.time;

import java.time.Instant;

/** A wall-clock time tied to a monotonic one, taken once per run: for people, never for timing. */
public record WallStamp(Instant instant, long monotonicNanos) {
  public static WallStamp now(MonotonicClock clock) {
    return new WallStamp(Instant.now(), clock.nanos());
  }

  public Instant at(long nanos) {
    return instant.plusNanos(nanos - monotonicNanos);
  }
}
