package railglow.live;

import railglow.observed.OutputState;

/**
 * The supply between the runs of a hands-free session.
 *
 * @param nanos when this was so
 * @param volts NaN when not known
 * @param amperes likewise
 */
public record LiveReading(long nanos, OutputState output, double volts, double amperes) {}
