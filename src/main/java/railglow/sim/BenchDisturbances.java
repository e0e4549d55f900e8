package railglow.sim;

import java.util.Optional;
import railglow.sim.circuit.Disturbances;
import railglow.sim.circuit.LoadBranch;
import railglow.sim.circuit.OutputStage;
import railglow.sim.fault.FaultKind;
import railglow.sim.fault.FaultSpec;
import railglow.sim.fault.FaultSwitches;

/** Carries the electrical fault switches out at the output the board hangs on. */
final class BenchDisturbances implements Disturbances {
  private static final double OPEN_OHMS = 1e9;
  private static final double SHARE_OF_CURRENT = 0.6;
  private final BenchScenario scenario;
  private final FaultSwitches faults;
  private final double faultOhms;
  private double sunkenLimitAmperes = Double.NaN;

  BenchDisturbances(BenchScenario scenario, FaultSwitches faults) {
    this.scenario = scenario;
    this.faults = faults;
    faultOhms =
        scenario.circuit().branches().stream()
            .filter(LoadBranch::fault)
            .flatMap(branch -> branch.series().stream())
            .mapToDouble(share -> share.ohms())
            .findFirst()
            .orElse(1);
  }

  @Override
  public void apply(long nowNanos, OutputStage stage) {
    Optional<FaultSpec> resistance = faults.active(FaultKind.RUNAWAY, nowNanos);
    if (resistance.isEmpty()) {
      resistance = faults.active(FaultKind.LEAVES_CC, nowNanos);
    }
    stage.circuit().setFaultScale(resistance.map(f -> f.value() / faultOhms).orElse(1.0));
    boolean lost = faults.isActive(FaultKind.CONTACT_LOST, nowNanos);
    stage.circuit().setContactOhms(lost ? OPEN_OHMS : scenario.circuit().contactOhms());
    stage
        .circuit()
        .setRailFarads(
            faults
                .active(FaultKind.SLOW_DISCHARGE, nowNanos)
                .map(FaultSpec::value)
                .orElse(scenario.circuit().railFarads()));
    if (faults.takeOnce(FaultKind.OVERVOLTAGE_TRIP, nowNanos)) {
      stage.trip(true);
    }
    if (faults.takeOnce(FaultKind.OVERCURRENT_TRIP, nowNanos)) {
      stage.trip(false);
    }
  }

  @Override
  public boolean ignoresOff(long nowNanos) {
    return faults.isActive(FaultKind.IGNORES_OFF, nowNanos);
  }

  @Override
  public double voltsAdded(long nowNanos) {
    return faults.active(FaultKind.VOLTAGE_OVER_SET, nowNanos).map(FaultSpec::value).orElse(0.0);
  }

  @Override
  public double limitAmperes(long nowNanos, OutputStage stage) {
    if (!faults.isActive(FaultKind.FALLS_INTO_CC, nowNanos)) {
      sunkenLimitAmperes = Double.NaN;
      return stage.setAmperes();
    }
    if (Double.isNaN(sunkenLimitAmperes) && stage.circuit().outputAmperes() > 1e-3) {
      sunkenLimitAmperes = SHARE_OF_CURRENT * stage.circuit().outputAmperes();
    }
    return Double.isNaN(sunkenLimitAmperes) ? stage.setAmperes() : sunkenLimitAmperes;
  }

  @Override
  public double strayAmperes(long nowNanos) {
    return faults.active(FaultKind.CURRENT_WHILE_OFF, nowNanos).map(FaultSpec::value).orElse(0.0);
  }

  @Override
  public double dischargeSiemens(long nowNanos) {
    return faults.isActive(FaultKind.SLOW_DISCHARGE, nowNanos) ? 0 : 0.01;
  }
}
