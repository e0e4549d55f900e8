package railglow.run.pulsed;

import railglow.journal.RunHeader;

/** Makes a run's header once its start is known. */
@FunctionalInterface
public interface HeaderMaker {
  /**
   * @param startNanos monotonic time of the timeline's zero
   */
  RunHeader make(long startNanos);
}
