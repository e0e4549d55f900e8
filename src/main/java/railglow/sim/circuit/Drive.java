package railglow.sim.circuit;

/**
 * What the supply's control wants of its output stage.
 *
 * @param connected whether the stage may source current at all
 * @param targetVolts the voltage it regulates to
 * @param limitAmperes the current it never exceeds
 * @param strayAmperes flows into the output although it is off; 0 in a sound supply
 * @param dischargeSiemens pulls the output down while it is off
 */
public record Drive(
    boolean connected,
    double targetVolts,
    double limitAmperes,
    double strayAmperes,
    double dischargeSiemens) {}
