package railglow.run;

import java.util.List;
import railglow.journal.Entry;
import railglow.observed.Frame;
import railglow.observed.SupplyReading;
import railglow.thermal.Look;

/**
 * Several watchers as one, told in order.
 *
 * @param watchers each is told everything
 */
public record RunWatchers(List<RunWatcher> watchers) implements RunWatcher {
  public RunWatchers {
    watchers = List.copyOf(watchers);
  }

  @Override
  public void onProgress(RunProgress progress) {
    watchers.forEach(watcher -> watcher.onProgress(progress));
  }

  @Override
  public void onMessage(String sentence) {
    watchers.forEach(watcher -> watcher.onMessage(sentence));
  }

  @Override
  public void onFrame(Frame frame) {
    watchers.forEach(watcher -> watcher.onFrame(frame));
  }

  @Override
  public void onReading(SupplyReading reading) {
    watchers.forEach(watcher -> watcher.onReading(reading));
  }

  @Override
  public void onCycle(Entry.Cycle cycle) {
    watchers.forEach(watcher -> watcher.onCycle(cycle));
  }

  @Override
  public void onLook(Look look) {
    watchers.forEach(watcher -> watcher.onLook(look));
  }

  @Override
  public void onEnded(RunEnding ending) {
    watchers.forEach(watcher -> watcher.onEnded(ending));
  }
}
