package railglow.run.handsfree;

/**
 * What came of one touch.
 *
 * @param number from 1
 * @param runId name of its run folder
 * @param verdict as in the findings; {@code NO_FINDINGS} when the run had no data
 * @param where the first suspect, or the place in the picture; empty when nothing was found
 * @param swingKelvin of the strongest source in step with the pulse, in the findings' unit; NaN
 *     without one
 * @param unit of the swing
 * @param onVolts at the probe, leads taken off; NaN when not measured
 * @param onAmperes NaN when not measured
 * @param lowestOhms seen while ON, leads taken off; NaN when nothing flowed
 * @param highestOhms likewise
 * @param felt before the run; its parts are NaN where they can't be told
 * @param ended in words
 */
public record TouchResult(
    int number,
    String label,
    String runId,
    String verdict,
    String where,
    double swingKelvin,
    String unit,
    double onVolts,
    double onAmperes,
    double lowestOhms,
    double highestOhms,
    ContactShare felt,
    int cyclesUsed,
    int cyclesRejected,
    String ended) {
  /** At the probe: of the rail alone where sensed at the board, else with the contact. */
  public double ohms() {
    return onVolts / onAmperes;
  }

  public boolean isMeasured() {
    return Double.isFinite(ohms()) && onAmperes > 0;
  }
}
