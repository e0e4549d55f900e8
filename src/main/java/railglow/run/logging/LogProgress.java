package railglow.run.logging;

import java.util.List;
import railglow.observed.OutputState;
import railglow.observed.SupplyReading;

/**
 * How a log stands at one moment. Immutable.
 *
 * @param recording whether frames are kept, or the start condition is still waited for
 * @param seconds since the beginning
 * @param output of a supply that this program drives; null when it drives none
 * @param reading the newest; null when there is none
 * @param hottestCelsius NaN when the camera has no absolute scale
 * @param hottestRiseKelvin NaN before there is a baseline
 * @param names of the places
 * @param means one for each place
 * @param rises above the baseline, one for each place; NaN before there is one
 */
public record LogProgress(
    long nanos,
    boolean recording,
    double seconds,
    long frames,
    int markers,
    OutputState output,
    SupplyReading reading,
    double hottestCelsius,
    double hottestRiseKelvin,
    List<String> names,
    double[] means,
    double[] rises) {}
