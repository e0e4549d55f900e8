package railglow.supply;

/**
 * How this supply wants to be talked to.
 *
 * @param sendTerminator ends every message to the supply
 * @param replyTerminator ends every reply
 * @param replyTimeoutNanos longest wait for a whole reply
 * @param pauseNanos least time from the end of one message to the start of the next
 * @param compoundQueries whether several commands and queries may stand in one message
 * @param echoes whether the supply sends back what it is sent
 * @param readingIntervalNanos time between two readings
 */
public record WireManners(
    String sendTerminator,
    String replyTerminator,
    long replyTimeoutNanos,
    long pauseNanos,
    boolean compoundQueries,
    boolean echoes,
    long readingIntervalNanos) {}
