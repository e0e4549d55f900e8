package railglow.run.reduction;

import railglow.journal.Entry;
import railglow.observed.Frame;
import railglow.thermal.Look;

/** Hears nothing of a reduction; tests override what they ask for. */
public class DeafListener implements ReductionListener {
  @Override
  public void onCycle(Entry.Cycle cycle) {}

  @Override
  public void onLook(Look look, long nowNanos) {}

  @Override
  public void onReleased(Frame frame) {}
}
