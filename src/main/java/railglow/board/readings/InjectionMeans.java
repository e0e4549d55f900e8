package railglow.board.readings;

/**
 * What the bench can carry. Every figure in volts, amperes, watts or ohms; infinite where there is
 * no limit.
 *
 * @param maxVolts the bench's own
 * @param maxAmperes the bench's own
 * @param maxWatts the bench's own
 * @param leadOhms of both leads together, 0 when sensed at the board
 * @param leadAmperes what the leads may carry
 * @param connectorAmperes what clip or connector may carry
 */
public record InjectionMeans(
    double maxVolts,
    double maxAmperes,
    double maxWatts,
    double leadOhms,
    double leadAmperes,
    double connectorAmperes) {}
