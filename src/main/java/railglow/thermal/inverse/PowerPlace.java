package railglow.thermal.inverse;

/**
 * One place where heat arises.
 *
 * @param column of its centre, pixels
 * @param row likewise
 * @param watts while the output is ON
 */
public record PowerPlace(double column, double row, double watts) {}
