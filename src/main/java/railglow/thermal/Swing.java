package railglow.thermal;

import java.util.List;
import railglow.units.Interval;

/**
 * How far a place swings in step with the pulse: the size of its two amplitudes, whatever heat does
 * between and after pulses. Immutable.
 *
 * @param kelvin the size
 * @param interval95 of it: noise, stopping early, and what the shape's misfit leaves open
 */
record Swing(double kelvin, Interval interval95) {
  /** Second-order growth of the variance in much noise, by simulation. */
  private static final double CURVATURE = 13;

  /**
   * @param amplitudes in both channels
   * @param shapeVariance relative, of a factor common to both (the shape's)
   * @param stop how the run ended
   * @param nearer amplitudes of fits closer to the image's middle, which would be the same but for
   *     noise if the shape were right
   * @param open how far below and above the size the truth may be for reasons that are no noise
   */
  static Swing of(
      Amplitudes amplitudes,
      double shapeVariance,
      EarlyStop stop,
      List<Amplitudes> nearer,
      Interval open) {
    double kelvin = amplitudes.size();
    double known = amplitudes.sizeVariance();
    double growth = 1 + CURVATURE * known / (kelvin * kelvin);
    double sigma = Math.sqrt((known + Math.max(0, shapeVariance) * kelvin * kelvin) * growth);
    double lower = 0;
    double higher = 0;
    for (Amplitudes other : nearer) {
      double off = other.size() - kelvin;
      double noise = EarlyStop.HALF_95 * Math.sqrt(other.sizeVariance());
      double beyond = SettledRise.beyond(off, noise);
      lower = Math.max(lower, off < 0 ? beyond : 0);
      higher = Math.max(higher, off > 0 ? beyond : 0);
    }
    // what nobody can check adds to the noise as it is: it may be all there
    double below = stop.below() * sigma;
    double above = stop.above() * sigma;
    return new Swing(
        kelvin,
        new Interval(
            kelvin - Math.max(Math.hypot(below, lower), below - open.low()),
            kelvin + Math.max(Math.hypot(above, higher), above + open.high())));
  }
}
