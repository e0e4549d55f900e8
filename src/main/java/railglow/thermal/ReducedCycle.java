package railglow.thermal;

/**
 * One cycle reduced to its two channels, in kelvin; NaN where a quarter had no valid sample.
 *
 * @param inPhase (Q2+Q3-Q1-Q4)/2, curvature of the drift taken out
 * @param quadrature (Q3+Q4-Q1-Q2)/2, slope of the drift taken out
 */
record ReducedCycle(float[] inPhase, float[] quadrature) {}
