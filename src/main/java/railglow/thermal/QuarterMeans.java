package railglow.thermal;

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
 */
public record QuarterMeans(
    int cycle, Plane q1, Plane q2, Plane q3, Plane q4, int[] framesPerQuarter) {}
