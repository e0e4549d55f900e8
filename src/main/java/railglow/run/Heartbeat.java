package railglow.run;

import java.util.function.BooleanSupplier;
import java.util.function.LongSupplier;

/**
 * A loop the guard watches.
 *
 * @param name the loop's role, as in messages
 * @param lastNanos monotonic time of its last sign of life
 * @param maxAgeNanos how old that may be
 * @param expected whether the loop must be alive now; a finished loop is not expected
 */
public record Heartbeat(
    String name, LongSupplier lastNanos, long maxAgeNanos, BooleanSupplier expected) {}
