package railglow.sim.wire;

/**
 * Bytes on their way to the controller.
 *
 * @param pauseSeconds to wait before they are sent
 */
public record Transmission(double pauseSeconds, byte[] bytes) {}
