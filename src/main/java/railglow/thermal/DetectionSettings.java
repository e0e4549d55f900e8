package railglow.thermal;

/**
 * Everything a detection depends on besides the frames; part of every run's record.
 *
 * @param periodSeconds of the pulses
 * @param cameraTimeConstantSeconds first-order lag of camera and its smoothing
 * @param familyWiseError allowed over the whole run
 * @param minCycles no look before these
 * @param maxCycles the cap, at which all of the error is spent
 * @param filterSigmasPixels widths of the matched filters, ascending
 * @param bodyTimeConstantsSeconds of the bodies searched for, ascending, 0 for one that follows at
 *     once
 */
public record DetectionSettings(
    double periodSeconds,
    double cameraTimeConstantSeconds,
    double familyWiseError,
    int minCycles,
    int maxCycles,
    double[] filterSigmasPixels,
    double[] bodyTimeConstantsSeconds) {}
