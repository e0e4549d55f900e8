package railglow.cli;

import railglow.camera.CameraProfile;
import railglow.pulse.PulseSequence;
import railglow.thermal.DetectionSettings;

/** The method's settings that follow from a sequence and a camera. */
final class Detection {
  private Detection() {}

  static DetectionSettings settings(PulseSequence sequence, CameraProfile camera) {
    return DetectionSettings.usual(
        sequence.periodSeconds(),
        camera.timeConstantSeconds(),
        sequence.familyWiseError(),
        Math.max(2, sequence.minCycles()),
        Math.max(2, sequence.maxCycles()));
  }
}
