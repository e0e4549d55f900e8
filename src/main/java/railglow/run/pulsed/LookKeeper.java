package railglow.run.pulsed;

import railglow.journal.Entry;
import railglow.observed.Frame;
import railglow.pulse.PulseSequence;
import railglow.run.RunWatcher;
import railglow.run.Scribe;
import railglow.run.reduction.ReductionListener;
import railglow.safety.StopCause;
import railglow.safety.StopLatch;
import railglow.thermal.HeatSource;
import railglow.thermal.Look;

/**
 * Records what the reduction did and ends the run when it is sure. Called on the cruncher's thread;
 * what it publishes may be read by any.
 */
final class LookKeeper implements ReductionListener {
  private final PulseSequence sequence;
  private final Scribe scribe;
  private final StopLatch latch;
  private final RunWatcher watcher;
  private final Certainty certainty = new Certainty();
  private volatile int cyclesDone;
  private volatile Look latest;

  LookKeeper(PulseSequence sequence, Scribe scribe, StopLatch latch, RunWatcher watcher) {
    this.sequence = sequence;
    this.scribe = scribe;
    this.latch = latch;
    this.watcher = watcher;
  }

  @Override
  public void onCycle(Entry.Cycle cycle) {
    cyclesDone++;
    scribe.post(cycle);
    watcher.onCycle(cycle);
  }

  @Override
  public void onLook(Look look, long nowNanos) {
    latest = look;
    watcher.onLook(look);
    HeatSource best = look.strongest();
    scribe.post(
        new Entry.Looked(
            nowNanos,
            look.cycles(),
            look.sources().size(),
            best == null ? 1 : best.familyWiseP(),
            best == null ? Double.NaN : best.column(),
            best == null ? Double.NaN : best.row(),
            best == null ? Double.NaN : best.riseKelvin()));
    if (sequence.untilSure() && certainty.isReached(look)) {
      latch.set(
          StopCause.SURE_ENOUGH,
          nowNanos,
          "sure enough after " + look.cycles() + " cycles: no need to heat the board any longer");
    }
  }

  @Override
  public void onNote(String sentence, long nowNanos) {
    scribe.post(new Entry.Note(nowNanos, sentence));
    watcher.onMessage(sentence);
  }

  @Override
  public void onPlaceLost(long nowNanos) {
    latch.set(
        StopCause.REGISTRATION_LOST,
        nowNanos,
        "board or camera was moved and the scene is not found again; fix both and start anew");
  }

  @Override
  public void onReleased(Frame frame) {
    scribe.store(frame);
  }

  int cyclesDone() {
    return cyclesDone;
  }

  /** Null before the first look. */
  HeatSource strongest() {
    Look look = latest;
    return look == null ? null : look.strongest();
  }
}
