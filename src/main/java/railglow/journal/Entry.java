package railglow.journal;

import java.util.Map;
import railglow.observed.OutputState;
import railglow.observed.SupplyReading;
import railglow.safety.StopCause;

/**
 * One line of a journal after its header. Every entry carries a monotonic time of the run's clock.
 */
public sealed interface Entry {
  long nanos();

  /** A look at the supply. */
  record Reading(SupplyReading reading) implements Entry {
    @Override
    public long nanos() {
      return reading.endNanos();
    }
  }

  /** A change of the output. */
  record EdgeMade(railglow.observed.Edge edge) implements Entry {
    @Override
    public long nanos() {
      return edge.confirmedNanos();
    }
  }

  /** What is known of the output has changed. */
  record Output(long nanos, OutputState state) implements Entry {}

  /**
   * A cycle has been reduced or rejected.
   *
   * @param accepted whether it counts
   * @param reason why not; empty when accepted
   * @param framesUsed per quarter, 4 numbers
   * @param framesLeftOut by reason
   */
  record Cycle(
      long nanos,
      int cycle,
      boolean accepted,
      String reason,
      int[] framesUsed,
      Map<String, Integer> framesLeftOut)
      implements Entry {}

  /**
   * A look at the data.
   *
   * @param bestFamilyWiseP of the strongest candidate; 1 when there is none
   */
  record Looked(
      long nanos,
      int cycles,
      int sources,
      double bestFamilyWiseP,
      double bestColumn,
      double bestRow,
      double bestRiseKelvin)
      implements Entry {}

  /**
   * The hottest pixel, a few times a second.
   *
   * @param celsius NaN when the camera has no absolute scale
   * @param riseKelvin above the pixel's own lead-in mean
   */
  record Hottest(long nanos, double celsius, double riseKelvin, int column, int row)
      implements Entry {}

  /** The first cause, once. */
  record Stopped(long nanos, StopCause cause, String evidence) implements Entry {}

  /** Anything a reader should know; also causes seen after the first. */
  record Note(long nanos, String text) implements Entry {}

  /**
   * The last entry. A journal without it says: not finished.
   *
   * @param framesArrived as counted by the camera reader
   * @param framesDropped lost by us for want of a free buffer
   * @param framesMissing never sent, by the gaps in their numbers or times
   */
  record Closed(
      long nanos,
      StopCause cause,
      OutputState output,
      int exitCode,
      long framesArrived,
      long framesDropped,
      long framesMissing)
      implements Entry {}
}
