package railglow.supply;

import railglow.safety.StopCause;

/**
 * One limit passed.
 *
 * @param evidence one sentence with the value and the limit
 */
public record Breach(StopCause cause, String evidence) {}
