package railglow.run.logging;

import java.util.List;
import java.util.Optional;
import railglow.board.places.PlacePixels;

/**
 * What is to be logged and for how long.
 *
 * @param levelVolts held steadily after the lead-in; NaN when nothing is injected
 * @param leadInSeconds before any injection: the baseline of every rise
 * @param longestSeconds after the lead-in, or after the start condition; infinite until stopped
 * @param waitSeconds how long the start condition is waited for; infinite until stopped
 * @param beforeSeconds of frames kept from before the start condition
 * @param startOn frames are kept from then on; empty from the beginning
 * @param stopOn ends the log
 * @param markOn each sets a mark when it becomes true
 * @param places followed in each frame
 */
public record LogPlan(
    double levelVolts,
    double leadInSeconds,
    double longestSeconds,
    double waitSeconds,
    double beforeSeconds,
    Optional<Condition> startOn,
    Optional<Condition> stopOn,
    List<Condition> markOn,
    List<PlacePixels> places) {
  public LogPlan {
    markOn = List.copyOf(markOn);
    places = List.copyOf(places);
  }

  public boolean injects() {
    return !Double.isNaN(levelVolts);
  }

  /** The longest it can last from its beginning; infinite when it ends only when stopped. */
  public double mostSeconds() {
    return leadInSeconds + (startOn.isPresent() ? waitSeconds : 0) + longestSeconds;
  }
}
