package railglow.sim.circuit;

/** Told what truly happens at an output, in order of time, on the thread that advances it. */
public interface OutputWatch {
  void onOutput(long nowNanos, boolean on, double setVolts);

  void onTrip(long nowNanos, boolean overVoltage);

  void onStep(long nowNanos, Circuit circuit);

  /** Watches nothing. */
  OutputWatch NONE =
      new OutputWatch() {
        @Override
        public void onOutput(long nowNanos, boolean on, double setVolts) {}

        @Override
        public void onTrip(long nowNanos, boolean overVoltage) {}

        @Override
        public void onStep(long nowNanos, Circuit circuit) {}
      };
}
