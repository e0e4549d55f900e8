package railglow.camera.alignment;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import railglow.camera.ArrivalClock;
import railglow.observed.Edge;
import railglow.observed.Frame;
import railglow.sim.BenchScenario;
import railglow.sim.BenchScenarios;
import railglow.sim.BenchWorld;
import railglow.sim.HeatAfterSwitch;
import railglow.sim.picture.FrameFate;
import railglow.sim.truth.TruthLog;
import railglow.thermal.CountSamples;

/**
 * Why the alignment asks for a bare resistor: how a part of a board warms is not known. What its
 * rail stores, the coat over it and the heat that spreads around it shift the latency by some
 * milliseconds, and the stated error does not tell. In invented time, with the simulated board's
 * C37 as the resistor.
 */
class AlignmentOnBenchTest {
  private static final String SETTING = "CURR 2;VOLT 4";
  private static final double CAMERA_SECONDS = 0.040;
  private static final double NANOS = 1e9;

  private static final double LAG = 0.010;

  @Test
  void onAPartOfABoardTheLatencyIsOffByMillisecondsAtMost() throws Exception {
    Alignment measured = measure(1, 24);
    assertEquals(0, offTheCameras(measured), 0.010, measured.toString());
    assertEquals(0, offBoth(measured), 0.010, measured.toString());
  }

  static double offTheCameras(Alignment measured) {
    return measured.latencySeconds() - CAMERA_SECONDS;
  }

  /** Off camera's and supply's: what an alignment measures. */
  static double offBoth(Alignment measured) {
    return offTheCameras(measured)
        - HeatAfterSwitch.meanSeconds(BenchScenarios.hx12(), SETTING, "C37");
  }

  static Alignment measure(long seed, int pulses) throws AlignmentRefusedException {
    BenchScenario scenario = BenchScenarios.hx12().withSeed(seed);
    BenchWorld world = new BenchWorld(scenario, 0, new TruthLog());
    int width = scenario.camera().width();
    int height = scenario.camera().height();
    double rate = scenario.camera().framesPerSecond();
    ArrivalClock clock = ArrivalClock.live(rate, 0, true);
    ResistorInView resistor = new ResistorInView(width, height);
    // SplittableRandom, for java.util.Random begins almost alike for seeds next to each other.
    SplittableRandom random = new SplittableRandom(seed);
    double place = random.nextDouble();
    double start = 1 + 0.04 * random.nextDouble();
    world.receive(SETTING, 0);
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
