package railglow.run.handsfree;

import railglow.observed.OutputState;

/**
 * How a wait for a touch stands at one moment.
 *
 * @param nanos when this was so
 * @param volts at the supply; NaN before the first reading
 * @param amperes likewise
 */
public record SensingNews(long nanos, OutputState output, double volts, double amperes) {}
