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

  /**
   * A place that a log follows in each frame. Its number is its place among these entries.
   *
   * @param runs the pixels it covers: row, first and last column of each stretch
   */
  record PlaceNamed(long nanos, String name, int[] runs) implements Entry {}

  /**
   * What a log followed in a frame, one number for each place, in degrees Celsius, in kelvin or in
   * counts, as the camera has a scale.
   *
   * @param nanos the frame's mid-exposure
   * @param frame its number
   * @param riseMean above the mean of the frames before the injection; NaN before there is one
   */
  record Followed(
      long nanos,
      long frame,
      double[] mean,
      double[] low,
      double[] high,
      double[] riseMean,
      double[] riseLow,
      double[] riseHigh)
      implements Entry {}

  /** Something worth finding again. */
  record Marker(long nanos, String text, Origin origin) implements Entry {
    /** Who set it. */
    public enum Origin {
      TYPED,
      CONDITION,
      /** The start condition: frames before are the baseline. */
      START
    }
  }

  /**
   * How well readings and frames lie on one time base.
   *
   * @param readingSeconds how far from the middle of its exchange a reading may be
   * @param frameSeconds how far from its stated mid-exposure a frame may be, the camera's latency
   *     taken as given
   */
  record Aligned(long nanos, double readingSeconds, double frameSeconds) implements Entry {}

  /**
   * The resistance of a held probe has left its band in an ON half; the half does not count.
   *
   * @param lowestOhms seen in that half so far, leads taken off
   * @param highestOhms likewise
   */
  record ContactSwung(long nanos, double lowestOhms, double highestOhms) implements Entry {}

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
