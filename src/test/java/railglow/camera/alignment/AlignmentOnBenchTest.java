package railglow.camera.alignment;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import railglow.camera.ArrivalClock;
import railglow.observed.Edge;
import railglow.observed.Frame;
import railglow.sim.BenchScenario;
import railglow.sim.BenchScenarios;
import railglow.sim.BenchWorld;
import railglow.sim.picture.FrameFate;
import railglow.sim.truth.TruthLog;
import railglow.thermal.CountSamples;

/** The whole measurement on the simulated bench, in invented time: its C37 is the resistor. */
class AlignmentOnBenchTest {
  private static final double TRUE_LATENCY = 0.040;
  private static final double NANOS = 1e9;

  private static final double LAG = 0.010;

  @Test
  void theLatencyOfTheSimulatedCameraIsRightWithinFiveMilliseconds() throws Exception {
    Alignment measured = measure(1, 24);
    double error = measured.latencySeconds() - TRUE_LATENCY;
    assertTrue(Math.abs(error) < 0.005, "off by " + error + ": " + measured);
    assertTrue(Math.abs(error) < 3 * measured.latencyErrorSeconds(), measured.toString());
  }

  @Test
  @Tag("slow")
  void theStatedErrorCoversTheTruthInRepeatedRuns() throws Exception {
    int covered = 0;
    int runs = 10;
    for (int seed = 1; seed <= runs; seed++) {
      Alignment measured = measure(seed, 48);
      double error = measured.latencySeconds() - TRUE_LATENCY;
      assertEquals(0, error, 0.005, measured.toString());
      covered += Math.abs(error) <= 2 * measured.latencyErrorSeconds() ? 1 : 0;
    }
    // Binomial, 10 runs at 95 %: fewer than 8 happen once in 90.
    assertTrue(covered >= 8, covered + " of " + runs);
  }

  static Alignment measure(long seed, int pulses) throws AlignmentRefusedException {
    BenchScenario scenario = BenchScenarios.hx12().withSeed(seed);
    BenchWorld world = new BenchWorld(scenario, 0, new TruthLog());
    int width = scenario.camera().width();
    int height = scenario.camera().height();
    double rate = scenario.camera().framesPerSecond();
    ArrivalClock clock = ArrivalClock.live(rate, 0, true);
    ResistorInView resistor = new ResistorInView(width, height);
    Random random = new Random(seed);
    double place = random.nextDouble();
    double start = 1 + 0.04 * random.nextDouble();
    world.receive("CURR 2;VOLT 4", 0);
    int next = 0;
    CountSamples image = new CountSamples(width, height);
    while (next < 2 * pulses) {
      long number = world.nextFrame();
      long exposure = world.exposureNanos(number);
      double due = start + 1.713 * (next / 2) + 0.811 * (next % 2);
      while (next < 2 * pulses && due * NANOS < exposure) {
        boolean on = next % 2 == 0;
        long commanded = Math.round((due - 0.004 * place) * NANOS);
        world.receive("OUTP " + (on ? "ON" : "OFF"), Math.round(due * NANOS));
        resistor.onEdge(new Edge(next, on, 4, commanded, commanded + 4_000_000));
        next++;
        due = start + 1.713 * (next / 2) + 0.811 * (next % 2);
      }
      FrameFate fate = world.camera().fate(number);
      world.takeFrame(exposure, image.counts());
      if (fate == FrameFate.SENT || fate == FrameFate.LATE) {
        double delay = world.camera().latencySeconds(fate) + 0.0005 * random.nextDouble();
        Frame frame = new Frame(image);
        frame.begin(number, exposure + Math.round(delay * NANOS));
        resistor.onFrame(frame, clock.midExposureNanos(frame));
      }
    }
    return resistor.fit(LAG);
  }
}
