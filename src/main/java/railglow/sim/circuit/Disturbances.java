package railglow.sim.circuit;

/** What goes wrong in the output stage and the load at a time. The default is a sound bench. */
public interface Disturbances {
  /** A sound bench. */
  Disturbances NONE = new Disturbances() {};

  /** Changes the load or the contact, or trips, as this moment has it. */
  default void apply(long nowNanos, OutputStage stage) {}

  default boolean ignoresOff(long nowNanos) {
    return false;
  }

  /** What is added to the regulated voltage. */
  default double voltsAdded(long nowNanos) {
    return 0;
  }

  /** The current limit that really holds. */
  default double limitAmperes(long nowNanos, OutputStage stage) {
    return stage.setAmperes();
  }

  /** Current that flows although the output is off. */
  default double strayAmperes(long nowNanos) {
    return 0;
  }

  /** How strongly the supply discharges its output while off. */
  default double dischargeSiemens(long nowNanos) {
    return 0.01;
  }
}
