package railglow.sim.wire;

import java.util.List;
import railglow.sim.circuit.Circuit;
import railglow.sim.circuit.CircuitSettings;
import railglow.sim.circuit.Disturbances;
import railglow.sim.circuit.LoadBranch;
import railglow.sim.circuit.OutputStage;
import railglow.sim.circuit.OutputWatch;
import railglow.sim.fault.FaultSpec;
import railglow.sim.fault.FaultSwitches;

/** A simulated supply at a plain resistor, in invented time. */
final class SupplyBesideLoad {
  final SimulatedSupply supply;
  final FaultSwitches faults;
  private long nowNanos;

  SupplyBesideLoad(SupplySettings settings, double ohms, FaultSpec... specs) {
    faults = new FaultSwitches(0, List.of(specs));
    boolean resumes = settings.family() != SupplySettings.usual().family();
    OutputStage first = stage(ohms, resumes);
    List<OutputStage> stages =
        settings.channels() == 1 ? List.of(first) : List.of(first, stage(100, resumes));
    supply = new SimulatedSupply(settings, stages, faults, 1);
  }

  SupplyBesideLoad(double ohms) {
    this(SupplySettings.usual(), ohms);
  }

  private static OutputStage stage(double ohms, boolean resumes) {
    CircuitSettings settings =
        new CircuitSettings(
            0.01, 1e-6, "clip", 10e-6, 1000, 10e-6, 1000, false, List.of(LoadBranch.of("R", ohms)));
    return new OutputStage(new Circuit(settings), Disturbances.NONE, OutputWatch.NONE, resumes, 0);
  }

  /** Sends after 50 ms of rest. */
  String send(String line) {
    waitSeconds(0.05);
    return supply.receive(line, nowNanos);
  }

  void waitSeconds(double seconds) {
    nowNanos += Math.round(seconds * 1e9);
  }

  double number(String query) {
    return Double.parseDouble(send(query));
  }
}
