package railglow.sim;

import java.util.Locale;
import java.util.Optional;
import railglow.sim.circuit.Circuit;
import railglow.sim.circuit.Disturbances;
import railglow.sim.circuit.LoadBranch;
import railglow.sim.circuit.OutputStage;
import railglow.sim.fault.FaultKind;
import railglow.sim.fault.FaultSpec;
import railglow.sim.fault.FaultSwitches;
import railglow.sim.hand.HandMove;
import railglow.sim.truth.TruthEvent;
import railglow.sim.truth.TruthLog;

/** Carries the electrical fault switches out at the output the board hangs on. */
final class BenchDisturbances implements Disturbances {
  private static final double OPEN_OHMS = 1e9;
  private static final double SHARE_OF_CURRENT = 0.6;
  private final BenchScenario scenario;
  private final FaultSwitches faults;
  private final TruthLog truth;
  private final double faultOhms;
  private Optional<HandMove> lastMove = Optional.empty();
  private double sunkenLimitAmperes = Double.NaN;
  private boolean listened;
  private long firstOnNanos;

  BenchDisturbances(BenchScenario scenario, FaultSwitches faults, TruthLog truth) {
    this.scenario = scenario;
    this.faults = faults;
    this.truth = truth;
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
    hold(handSeconds(nowNanos, stage), stage.circuit(), nowNanos);
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

  /** The hand sets out when somebody first listens for it. */
  private double handSeconds(long nowNanos, OutputStage stage) {
    if (!listened && stage.isOn()) {
      listened = true;
      firstOnNanos = nowNanos;
    }
    return listened ? (nowNanos - firstOnNanos) * 1e-9 : 0;
  }

  /** The clips, or the probe in the hand. */
  private void hold(double seconds, Circuit circuit, long nowNanos) {
    String place = scenario.circuit().contactPlace();
    double ohms = scenario.circuit().contactOhms();
    if (!scenario.hand().moves().isEmpty()) {
      Optional<HandMove> move = scenario.hand().at(seconds);
      place = move.map(HandMove::point).orElse(place);
      ohms = scenario.hand().ohmsAt(seconds);
      if (!move.equals(lastMove)) {
        lastMove = move;
        truth.note(
            nowNanos,
            TruthEvent.Kind.HAND,
            "does",
            move.map(m -> m.kind().name().toLowerCase(Locale.ROOT)).orElse("lift"),
            "point",
            move.map(HandMove::point).orElse(""));
      }
    }
    boolean lost = faults.isActive(FaultKind.CONTACT_LOST, nowNanos);
    circuit.setContact(place, lost ? OPEN_OHMS : ohms);
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
