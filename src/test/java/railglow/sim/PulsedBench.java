package railglow.sim;

import java.util.ArrayList;
import java.util.List;
import railglow.observed.Frame;
import railglow.sim.truth.TruthLog;
import railglow.thermal.CountSamples;

/** Pulses a bench in invented time and reduces what its camera sees. */
final class PulsedBench {
  private final BenchWorld world;
  private final double period;
  private final double volts;
  private final short[] counts;
  private final List<String> readings = new ArrayList<>();
  private boolean on;

  PulsedBench(BenchScenario scenario, double volts, double periodSeconds) {
    world = new BenchWorld(scenario, 0, new TruthLog());
    period = periodSeconds;
    this.volts = volts;
    counts = new short[scenario.camera().width() * scenario.camera().height()];
    world.receive("CURR 2;VOLT " + volts, 0);
  }

  BenchWorld world() {
    return world;
  }

  List<String> readings() {
    return readings;
  }

  double phase(long frame) {
    double seconds = frame / world.scenario().camera().framesPerSecond();
    return seconds % period / period;
  }

  /** Quarter OFF, half ON, quarter OFF; the array is reused. */
  short[] nextFrame() {
    long frame = world.nextFrame();
    long now = world.exposureNanos(frame);
    boolean wanted = volts > 0 && phase(frame) >= 0.25 && phase(frame) < 0.75;
    if (wanted != on) {
      on = wanted;
      world.receive("OUTP " + (on ? "ON" : "OFF"), now);
    }
    readings.add(world.receive("MEAS:VOLT?;:MEAS:CURR?", now));
    world.takeFrame(now, counts);
    return counts;
  }

  /** The next frame as a camera's reader hands it on; its pixels are its own. */
  Frame nextAsFrame() {
    long number = world.nextFrame();
    CountSamples image =
        new CountSamples(world.scenario().camera().width(), world.scenario().camera().height());
    System.arraycopy(nextFrame(), 0, image.counts(), 0, counts.length);
    Frame frame = new Frame(image);
    frame.begin(number, world.exposureNanos(number));
    return frame;
  }

  /** ON minus OFF of each pixel in kelvin, over these cycles after one that is left out. */
  double[] inPhaseKelvin(int cycles) {
    double[] sum = new double[counts.length];
    long perCycle = Math.round(period * world.scenario().camera().framesPerSecond());
    for (long k = 0; k < (cycles + 1) * perCycle; k++) {
      double phase = phase(world.nextFrame());
      nextFrame();
      double weight = k < perCycle ? 0 : (phase >= 0.25 && phase < 0.75 ? 1 : -1);
      for (int i = 0; i < sum.length; i++) {
        sum[i] += weight * (counts[i] & 0xFFFF);
      }
    }
    for (int i = 0; i < sum.length; i++) {
      sum[i] *= 0.01 / (cycles * perCycle / 2.0);
    }
    return sum;
  }

  static int warmest(double[] values) {
    int best = 0;
    for (int i = 0; i < values.length; i++) {
      best = values[i] > values[best] ? i : best;
    }
    return best;
  }
}
