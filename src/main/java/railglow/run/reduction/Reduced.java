package railglow.run.reduction;

import java.util.Map;
import railglow.thermal.Look;
import railglow.thermal.Plane;

/**
 * What is left of a run's frames and readings: all that findings are made from.
 *
 * @param look the last look; null when there were too few cycles for any
 * @param trust per pixel, 0 to 1, how far it follows the pulse alike in every cycle; null without a
 *     look
 * @param background mean image of the lead-in, in degrees Celsius or counts; null without one
 * @param framesLeftOut by reason
 * @param onVolts at the board in the settled ON halves; NaN when not measured
 */
public record Reduced(
    Look look,
    Plane trust,
    Plane background,
    int cyclesUsed,
    int cyclesRejected,
    Map<String, Integer> framesLeftOut,
    double onVolts,
    double onAmperes,
    double onWatts) {}
