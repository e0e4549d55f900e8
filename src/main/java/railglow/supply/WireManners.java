package railglow.supply;

import railglow.link.LinkSettings;

/**
 * How this supply wants to be talked to.
 *
 * @param link line ends, pauses, echo
 * @param replyTimeoutNanos longest time for one exchange
 * @param compound whether several commands and queries may stand in one message, joined by {@code
 *     ;:}
 * @param readingIntervalNanos longest time between two readings
 */
public record WireManners(
    LinkSettings link, long replyTimeoutNanos, boolean compound, long readingIntervalNanos) {}
