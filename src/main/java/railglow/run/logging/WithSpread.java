package railglow.run.logging;

import railglow.observed.Frame;
import railglow.observed.SupplyReading;
import railglow.run.RunProgress;
import railglow.run.RunWatcher;

/** Hands everything on, and takes the readings' spread on the way. */
record WithSpread(RunWatcher next, ReadingSpread spread) implements RunWatcher {
  @Override
  public void onProgress(RunProgress progress) {
    next.onProgress(progress);
  }

  @Override
  public void onMessage(String sentence) {
    next.onMessage(sentence);
  }

  @Override
  public void onFrame(Frame frame) {
    next.onFrame(frame);
  }

  @Override
  public void onReading(SupplyReading reading) {
    spread.add(reading);
    next.onReading(reading);
  }
}
