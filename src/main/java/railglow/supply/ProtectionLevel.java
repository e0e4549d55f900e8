package railglow.supply;

import java.util.Optional;
import railglow.units.Interval;

/**
 * A protection of the supply itself with a level: over-voltage or over-current.
 *
 * @param set template with {@code {volts}} or {@code {amperes}}
 * @param query reads the level back; empty when it can't be
 * @param enable switches it on; empty when it always is
 * @param range of the level
 * @param step smallest change of the level
 */
public record ProtectionLevel(
    String set, Optional<String> query, Optional<String> enable, Interval range, double step) {}
