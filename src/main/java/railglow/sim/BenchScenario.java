package railglow.sim;

import java.util.List;
import railglow.sim.circuit.CircuitSettings;
import railglow.sim.circuit.LoadBranch;
import railglow.sim.fault.FaultSpec;
import railglow.sim.hand.HandScript;
import railglow.sim.picture.CameraSettings;
import railglow.sim.picture.Reflection;
import railglow.sim.wire.SupplySettings;

/**
 * Everything a simulated bench is made of. The same value gives the same physics; the same commands
 * at the same times give the same bytes.
 *
 * @param name as on the command line
 * @param description one sentence
 * @param seed of all its noise
 * @param roomCelsius of air and walls
 */
public record BenchScenario(
    String name,
    String description,
    long seed,
    double roomCelsius,
    BoardLayout board,
    CircuitSettings circuit,
    SupplySettings supply,
    CameraSettings camera,
    Reflection reflection,
    HandScript hand,
    List<FaultSpec> faults) {
  public BenchScenario {
    faults = List.copyOf(faults);
  }

  /** The places that are truly at fault. */
  public List<String> faultyParts() {
    return circuit.branches().stream()
        .filter(branch -> branch.fault() && branch.series().get(0).ohms() < 1e5)
        .map(LoadBranch::place)
        .distinct()
        .toList();
  }

  public BenchScenario withSeed(long newSeed) {
    return new BenchScenario(
        name,
        description,
        newSeed,
        roomCelsius,
        board,
        circuit,
        supply,
        camera,
        reflection,
        hand,
        faults);
  }

  public BenchScenario withBoard(BoardLayout newBoard) {
    return new BenchScenario(
        name,
        description,
        seed,
        roomCelsius,
        newBoard,
        circuit,
        supply,
        camera,
        reflection,
        hand,
        faults);
  }

  public BenchScenario withCircuit(CircuitSettings newCircuit) {
    return new BenchScenario(
        name,
        description,
        seed,
        roomCelsius,
        board,
        newCircuit,
        supply,
        camera,
        reflection,
        hand,
        faults);
  }

  public BenchScenario withSupply(SupplySettings newSupply) {
    return new BenchScenario(
        name,
        description,
        seed,
        roomCelsius,
        board,
        circuit,
        newSupply,
        camera,
        reflection,
        hand,
        faults);
  }

  public BenchScenario withCamera(CameraSettings newCamera) {
    return new BenchScenario(
        name,
        description,
        seed,
        roomCelsius,
        board,
        circuit,
        supply,
        newCamera,
        reflection,
        hand,
        faults);
  }

  public BenchScenario withReflection(Reflection newReflection) {
    return new BenchScenario(
        name,
        description,
        seed,
        roomCelsius,
        board,
        circuit,
        supply,
        camera,
        newReflection,
        hand,
        faults);
  }

  public BenchScenario withHand(HandScript newHand) {
    return new BenchScenario(
        name,
        description,
        seed,
        roomCelsius,
        board,
        circuit,
        supply,
        camera,
        reflection,
        newHand,
        faults);
  }

  public BenchScenario withFaults(List<FaultSpec> newFaults) {
    return new BenchScenario(
        name,
        description,
        seed,
        roomCelsius,
        board,
        circuit,
        supply,
        camera,
        reflection,
        hand,
        newFaults);
  }
}
