package railglow.camera.noise;

/**
 * What one camera's noise is like on a still scene. All amplitudes in the unit of the frames that
 * were measured (kelvin once scaled).
 *
 * @param frames how many were measured
 * @param seconds how long that took
 * @param temporal standard deviation of one pixel over the whole time, rows, columns and the whole
 *     frame's own movements taken out; median over pixels
 * @param frameToFrame from one frame to the next, divided by the root of 2: smaller than {@code
 *     temporal} where the camera smooths in time or drifts
 * @param nextFrameCorrelation of one pixel's noise with itself one frame later
 * @param horizontalCorrelation of the noise of pixels side by side
 * @param verticalCorrelation of the noise of pixels one above the other
 * @param rowTogether standard deviation of whole rows' own movement
 * @param columnTogether standard deviation of whole columns' own movement
 * @param frameTogether standard deviation of the whole frame's movement
 * @param averagingSeconds of the Allan deviations, ascending
 * @param allanDeviations of one pixel for each averaging time, as {@code temporal} is cleaned
 */
public record NoiseFigures(
    int frames,
    double seconds,
    double temporal,
    double frameToFrame,
    double nextFrameCorrelation,
    double horizontalCorrelation,
    double verticalCorrelation,
    double rowTogether,
    double columnTogether,
    double frameTogether,
    double[] averagingSeconds,
    double[] allanDeviations) {

  /** The same in another unit. */
  public NoiseFigures scaled(double factor) {
    double[] scaledDeviations = allanDeviations.clone();
    for (int i = 0; i < scaledDeviations.length; i++) {
      scaledDeviations[i] *= factor;
    }
    return new NoiseFigures(
        frames,
        seconds,
        temporal * factor,
        frameToFrame * factor,
        nextFrameCorrelation,
        horizontalCorrelation,
        verticalCorrelation,
        rowTogether * factor,
        columnTogether * factor,
        frameTogether * factor,
        averagingSeconds.clone(),
        scaledDeviations);
  }

  /** The Allan deviation at any averaging time, by straight lines between the logarithms. */
  public double allanDeviationAt(double averaging) {
    int last = averagingSeconds.length - 1;
    if (last < 0 || !(averaging > 0)) {
      return Double.NaN;
    }
    if (averaging <= averagingSeconds[0]) {
      return allanDeviations[0];
    }
    for (int i = 1; i <= last; i++) {
      if (averaging <= averagingSeconds[i]) {
        double part =
            Math.log(averaging / averagingSeconds[i - 1])
                / Math.log(averagingSeconds[i] / averagingSeconds[i - 1]);
        return allanDeviations[i - 1] * Math.pow(allanDeviations[i] / allanDeviations[i - 1], part);
      }
    }
    return Double.NaN;
  }
}
