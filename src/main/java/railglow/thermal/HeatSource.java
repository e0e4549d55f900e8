package railglow.thermal;

import java.util.List;
import railglow.units.Interval;

/**
 * A detected, localised rise with its uncertainty. Immutable.
 *
 * <p>The swing is what is seen: it needs no model, and is the same in every run with pulses of the
 * same kind. The settled rise is what would be seen under steady power, as far as models tell.
 *
 * @param column sub-pixel position, 0 is the centre of the left column
 * @param row sub-pixel position, 0 is the centre of the top row
 * @param columnVariance px^2
 * @param rowVariance px^2
 * @param covariance px^2
 * @param swingKelvin size of the part in step with the pulse at its peak, in the unit of the
 *     planes: the mean over the warmer half of the period above that over the cooler half
 * @param swingInterval95 95 % interval of it
 * @param riseKelvin final (settled) rise at its peak, in the unit of the planes
 * @param riseInterval95 95 % interval of it
 * @param inPhaseKelvin ON minus OFF at its peak
 * @param quadratureKelvin slow part at its peak
 * @param timeConstantSeconds of the first-order body that fits best; 0 when it follows at once
 * @param widthPixels Gaussian sigma of the filter that fits best
 * @param familyWiseP probability that noise alone would show anything this strong anywhere in the
 *     picture, at any width and delay searched and at any look of the run
 * @param cycleConsistency share of cycles in which the source has its own sign, 0 to 1
 * @param models what each model that the data allow makes of the settled rise; empty where it was
 *     not kept
 */
public record HeatSource(
    double column,
    double row,
    double columnVariance,
    double rowVariance,
    double covariance,
    double swingKelvin,
    Interval swingInterval95,
    double riseKelvin,
    Interval riseInterval95,
    double inPhaseKelvin,
    double quadratureKelvin,
    double timeConstantSeconds,
    double widthPixels,
    double familyWiseP,
    double cycleConsistency,
    List<RiseByModel> models) {
  /** An interval from one value to so many times that says nothing. */
  private static final double TOO_WIDE = 10;

  public HeatSource {
    models = List.copyOf(models);
  }

  /**
   * Whether the pulses tell how far the place would settle, at least to its order of magnitude: a
   * warm place may be pulsed too briefly, or seen in too much noise, for that.
   */
  public boolean settledRiseIsKnown() {
    return riseInterval95.low() > 0 && riseInterval95.high() < TOO_WIDE * riseInterval95.low();
  }
}
