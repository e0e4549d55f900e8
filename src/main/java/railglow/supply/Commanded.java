package railglow.supply;

import railglow.observed.Regulation;

/**
 * What the output has been told, to judge a reading by.
 *
 * @param on whether it shall be on
 * @param levelVolts the level while on; while off the last one
 * @param limitAmperes the supply's current limit
 * @param sinceNanos when this was confirmed
 * @param expected the regulation seen at this level before; {@code NOT_REPORTED} while nothing is
 *     expected
 * @param chargingAboveVolts a reading at the current limit with more volts shows a rail that is
 *     still charging; NaN when that is no excuse
 */
public record Commanded(
    boolean on,
    double levelVolts,
    double limitAmperes,
    long sinceNanos,
    Regulation expected,
    double chargingAboveVolts) {}
