package railglow.sim;

import railglow.sim.circuit.Circuit;
import railglow.sim.truth.TruthLog;

/** How long after its switch the simulated supply really heats a place, and stops heating it. */
public final class HeatAfterSwitch {
  private static final long STEP_NANOS = 10_000;
  private static final int STEPS = 10_000;
  private static final double STEP_SECONDS = 1e-9 * STEP_NANOS;

  private HeatAfterSwitch() {}

  /**
   * The mean of both, in seconds, by integrating the missing part of the power.
   *
   * @param setting such as {@code CURR 0.2;VOLT 1}
   * @param place of a branch of the scenario's circuit
   */
  public static double meanSeconds(BenchScenario scenario, String setting, String place) {
    BenchWorld world = new BenchWorld(scenario, 0, new TruthLog());
    Circuit circuit = world.supply().output(1).circuit();
    world.receive(setting, 0);
    world.receive("OUTP ON", 0);
    double on = joules(world, circuit, place, 0);
    double fullWatts = circuit.wattsAt(place);
    world.receive("OUTP OFF", STEPS * STEP_NANOS);
    double off = joules(world, circuit, place, STEPS * STEP_NANOS);
    return (STEPS * STEP_SECONDS - on / fullWatts + off / fullWatts) / 2;
  }

  private static double joules(BenchWorld world, Circuit circuit, String place, long startNanos) {
    double joules = 0;
    for (int i = 1; i <= STEPS; i++) {
      world.advance(startNanos + i * STEP_NANOS);
      joules += circuit.wattsAt(place) * STEP_SECONDS;
    }
    return joules;
  }
}
