package railglow.supply;

import railglow.observed.Edge;
import railglow.observed.OutputState;
import railglow.observed.SupplyReading;
import railglow.safety.Stop;

/** Told what the keeper saw and did, on the keeper's thread; must return at once. */
public interface SupplyListener {
  /** Hears nothing. */
  SupplyListener NONE =
      new SupplyListener() {
        @Override
        public void onReading(SupplyReading reading) {}

        @Override
        public void onEdge(Edge edge) {}

        @Override
        public void onOutputState(OutputState state, long nowNanos) {}
      };

  void onReading(SupplyReading reading);

  void onEdge(Edge edge);

  void onOutputState(OutputState state, long nowNanos);

  /** A breach seen after the first, which keeps its place as the cause. */
  default void onFurtherBreach(Stop stop) {}

  /**
   * Something the operator must know while it lasts, such as an output that can't be proven off.
   */
  default void onWarning(String sentence, long nowNanos) {}
}
