package railglow.run.ladder;

import railglow.observed.Edge;
import railglow.observed.OutputState;
import railglow.observed.SupplyReading;
import railglow.run.SupplyEvents;
import railglow.safety.Stop;
import railglow.supply.SupplyListener;

/**
 * Hands what the keeper saw to the record first and to the stepper then. On the keeper's thread.
 */
record LadderEvents(SupplyEvents record, LadderStepper stepper) implements SupplyListener {
  @Override
  public void onReading(SupplyReading reading) {
    record.onReading(reading);
    stepper.onReading(reading);
  }

  @Override
  public void onEdge(Edge edge) {
    record.onEdge(edge);
    stepper.onEdge(edge);
  }

  @Override
  public void onOutputState(OutputState state, long nowNanos) {
    record.onOutputState(state, nowNanos);
    stepper.onOutputState(state, nowNanos);
  }

  @Override
  public void onFurtherBreach(Stop stop) {
    record.onFurtherBreach(stop);
  }

  @Override
  public void onWarning(String sentence, long nowNanos) {
    record.onWarning(sentence, nowNanos);
  }
}
