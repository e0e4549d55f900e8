package railglow.sim.wire;

import railglow.scpi.InstrumentStatus;
import railglow.sim.circuit.Circuit;
import railglow.sim.circuit.OutputStage;

/** Puts what an output does into the bits of its family of supplies. */
final class StatusWiring {
  private static final int OPERATION_CV = 1 << 8;
  private static final int OPERATION_CC = 1 << 10;
  private final SupplySettings.StatusFamily family;
  private final InstrumentStatus status;

  StatusWiring(SupplySettings.StatusFamily family, InstrumentStatus status) {
    this.family = family;
    this.status = status;
  }

  void refresh(OutputStage stage) {
    status.questionable().setCondition(questionable(stage));
    status.operation().setCondition(operation(stage));
  }

  int operation(OutputStage stage) {
    if (family == SupplySettings.StatusFamily.REGULATION_IN_QUESTIONABLE || !stage.isOn()) {
      return 0;
    }
    return (isCv(stage) ? OPERATION_CV : 0) | (isCc(stage) ? OPERATION_CC : 0);
  }

  int questionable(OutputStage stage) {
    int overVolts = stage.overVoltageTripped() ? 1 : 0;
    int overAmperes = stage.overCurrentTripped() ? 1 : 0;
    if (family == SupplySettings.StatusFamily.REGULATION_IN_OPERATION) {
      return overVolts | overAmperes << 1;
    }
    int regulation = stage.isOn() ? (isCc(stage) ? 1 : 0) | (isCv(stage) ? 2 : 0) : 0;
    return regulation | overVolts << 9 | overAmperes << 10;
  }

  private static boolean isCv(OutputStage stage) {
    Circuit.Mode mode = stage.circuit().mode();
    return mode == Circuit.Mode.CONSTANT_VOLTAGE || mode == Circuit.Mode.PULLED_UP;
  }

  private static boolean isCc(OutputStage stage) {
    return stage.circuit().mode() == Circuit.Mode.CONSTANT_CURRENT;
  }
}
