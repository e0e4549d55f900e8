package railglow.run.reduction;

import railglow.camera.ArrivalClock;
import railglow.journal.CameraFacts;

/** The clock that makes a camera's arrivals into mid-exposure times. */
final class CameraClock {
  private CameraClock() {}

  static ArrivalClock of(CameraFacts camera) {
    return camera.timesAreExposures()
        ? ArrivalClock.recorded(camera.framesPerSecond(), camera.latencySeconds())
        : ArrivalClock.live(
            camera.framesPerSecond(), camera.latencySeconds(), camera.numbersAreCounted());
  }
}
