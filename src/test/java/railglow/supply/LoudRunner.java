package railglow.supply;

import railglow.time.Step;
import railglow.time.StepRunner;
import railglow.time.SystemClock;

/** Threads of a study, which ends where one of them fails. */
final class LoudRunner {
  private LoudRunner() {}

  static StepRunner of(String name, Step step) {
    return new StepRunner(name, step, SystemClock.INSTANCE, LoudRunner::failed);
  }

  static void failed(String who, Throwable e) {
    throw new IllegalStateException(who, e);
  }
}
