package railglow.supply;

import railglow.observed.Edge;
import railglow.observed.OutputState;
import railglow.observed.SupplyReading;

/** Told what the keeper saw and did, on the keeper's thread; must return at once. */
public interface SupplyListener {
  void onReading(SupplyReading reading);

  void onEdge(Edge edge);

  void onOutputState(OutputState state, long nowNanos);
}
