package railglow.cli;

import railglow.camera.CameraProfile;
import railglow.pulse.PulseOrder;
import railglow.pulse.PulseSequence;
import railglow.thermal.DetectionSettings;

/** The method's settings that follow from a sequence and a camera. */
final class Detection {
  private Detection() {}

  static DetectionSettings settings(PulseSequence sequence, CameraProfile camera) {
    boolean coded = sequence.order() == PulseOrder.CODED;
    int perUnit = coded ? 2 : 1;
    DetectionSettings usual =
        DetectionSettings.usual(
            sequence.periodSeconds(),
            camera.timeConstantSeconds(),
            sequence.familyWiseError(),
            Math.max(2, sequence.minCycles() / perUnit),
            Math.max(2, sequence.maxCycles() / perUnit));
    return coded ? usual.inPairs() : usual;
  }
}
