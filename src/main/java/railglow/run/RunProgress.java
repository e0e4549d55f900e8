package railglow.run;

import railglow.observed.OutputState;
import railglow.thermal.HeatSource;

/**
 * How a run stands at one moment, for those who watch it. Immutable.
 *
 * @param nanos when this was so
 * @param cyclesDone cycles ended, counted or not
 * @param cyclesPlanned the cap
 * @param elapsedSeconds since the start of the timeline
 * @param longestSeconds until the end of the timeline at the cap
 * @param volts at the supply; NaN before the first reading
 * @param amperes likewise
 * @param hottestCelsius NaN when the camera has no absolute scale
 * @param hottestRiseKelvin above its own lead-in mean; NaN before there is one
 * @param strongest the strongest candidate so far; null before the first look
 * @param unit of its rise: "K" or "counts"
 */
public record RunProgress(
    long nanos,
    int cyclesDone,
    int cyclesPlanned,
    double elapsedSeconds,
    double longestSeconds,
    OutputState output,
    double volts,
    double amperes,
    double hottestCelsius,
    double hottestRiseKelvin,
    HeatSource strongest,
    String unit) {}
