package railglow.thermal;

/**
 * Something that follows the pulse, but not as heat does. Immutable.
 *
 * @param source as if it were heat; its family-wise p is that of noise alone
 */
public record RefusedSource(HeatSource source, NotHeat reason) {}
