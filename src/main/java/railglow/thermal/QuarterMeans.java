package railglow.thermal;

import java.util.List;

/**
 * The four quarter means of one cycle: all that is kept of its frames. Planes are in kelvin (or in
 * counts where the camera has no scale) against one common offset per pixel of the run, so that
 * floats keep their digits. Owned by the receiver.
 *
 * @param cycle from 0
 * @param q1 OFF, before the pulse
 * @param q2 first half of ON
 * @param q3 second half of ON
 * @param q4 OFF, after the pulse
 * @param framesPerQuarter how many frames each mean was made of, 4 numbers, each at least 1
 * @param times of the frames: of one cycle, or of both cycles of a coded pair; empty where each
 *     mean is taken for that of the whole quarter
 */
public record QuarterMeans(
    int cycle,
    Plane q1,
    Plane q2,
    Plane q3,
    Plane q4,
    int[] framesPerQuarter,
    List<CycleTimes> times) {
  public QuarterMeans {
    times = List.copyOf(times);
  }

  /** Means of whole quarters. */
  public QuarterMeans(int cycle, Plane q1, Plane q2, Plane q3, Plane q4, int[] framesPerQuarter) {
    this(cycle, q1, q2, q3, q4, framesPerQuarter, List.of());
  }

  /** The same planes with the times of their frames. */
  public QuarterMeans at(CycleTimes cycleTimes) {
    return new QuarterMeans(cycle, q1, q2, q3, q4, framesPerQuarter, List.of(cycleTimes));
  }
}
