package railglow.run.logging;

import railglow.run.RunProgress;
import railglow.run.RunWatcher;

/** Told how a log stands; must return at once. Called from several threads. */
public interface LogWatcher extends RunWatcher {
  /** A few times a second. */
  void onLog(LogProgress progress);

  @Override
  default void onProgress(RunProgress progress) {}
}
