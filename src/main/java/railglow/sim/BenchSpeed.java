package railglow.sim;

import railglow.sim.truth.TruthLog;
import railglow.time.MonotonicClock;

/** Measures how much faster than real time the bench is in memory. */
public final class BenchSpeed {
  private BenchSpeed() {}

  /**
   * Runs the whole bench, pulsing at 1 V with a period of 2 s, on the calling thread.
   *
   * @param simulatedSeconds how long in its own time, after as much for warming up
   * @return simulated seconds for each second of the clock
   */
  public static double timesRealTime(
      BenchScenario scenario, double simulatedSeconds, MonotonicClock clock) {
    BenchWorld world = new BenchWorld(scenario, 0, new TruthLog());
    world.receive("VOLT 1;CURR 2", 0);
    run(world, simulatedSeconds);
    long before = clock.nanos();
    run(world, simulatedSeconds);
    return simulatedSeconds / ((clock.nanos() - before) * 1e-9);
  }

  private static void run(BenchWorld world, double seconds) {
    int width = world.scenario().camera().width();
    short[] counts = new short[width * world.scenario().camera().height()];
    double rate = world.scenario().camera().framesPerSecond();
    long frames = Math.round(seconds * rate);
    for (long i = 0; i < frames; i++) {
      long number = world.nextFrame();
      long now = world.exposureNanos(number);
      boolean on = number / rate % 2 >= 1;
      world.receive(on ? "OUTP ON" : "OUTP OFF", now);
      world.receive("MEAS:CURR?", now);
      world.takeFrame(now, counts);
    }
  }
}
