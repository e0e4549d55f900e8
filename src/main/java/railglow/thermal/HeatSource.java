package railglow.thermal;

import railglow.units.Interval;

/**
 * A detected, localised rise with its uncertainty. Immutable.
 *
 * @param column sub-pixel position, 0 is the centre of the left column
 * @param row sub-pixel position, 0 is the centre of the top row
 * @param columnVariance px^2
 * @param rowVariance px^2
 * @param covariance px^2
 * @param riseKelvin final (settled) rise at its peak, in the unit of the planes
 * @param riseInterval95 95 % interval of it
 * @param inPhaseKelvin ON minus OFF at its peak
 * @param quadratureKelvin slow part at its peak
 * @param timeConstantSeconds of the first-order body that fits best; 0 when it follows at once
 * @param widthPixels Gaussian sigma of the filter that fits best
 * @param familyWiseP probability that noise alone would show anything this strong anywhere in the
 *     picture, at any width and delay searched and at any look of the run
 * @param cycleConsistency share of cycles in which the source has its own sign, 0 to 1
 */
public record HeatSource(
    double column,
    double row,
    double columnVariance,
    double rowVariance,
    double covariance,
    double riseKelvin,
    Interval riseInterval95,
    double inPhaseKelvin,
    double quadratureKelvin,
    double timeConstantSeconds,
    double widthPixels,
    double familyWiseP,
    double cycleConsistency) {}
