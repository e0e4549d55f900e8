package railglow.camera.alignment;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/**
 * A resistor of two time constants, pulsed and seen through a late, slow and noisy camera, by exact
 * step responses. Written apart from the fitted model: its bodies are none of the model's.
 */
final class PulsedResistor {
  private static final double[] BODIES = {0.34, 3.1};
  private static final double[] SHARES = {6, 4};
  final List<EdgeTime> edges = new ArrayList<>();
  final double[] times;
  final double[] values;

  /**
   * @param kelvin final rise
   * @param noiseKelvin of the value in one frame
   * @param edgeWidth seconds from command to confirmation; the edge is anywhere in it, the same for
   *     all
   */
  PulsedResistor(
      double latency,
      double lag,
      double framesPerSecond,
      double kelvin,
      double noiseKelvin,
      double edgeWidth,
      int pulses,
      long seed) {
    Random random = new Random(seed);
    double place = edgeWidth * (random.nextDouble() - 0.5);
    List<Double> truths = new ArrayList<>();
    for (int k = 0; k < pulses; k++) {
      double on = 2 + 1.713 * k;
      for (double nominal : new double[] {on, on + 0.811}) {
        edges.add(new EdgeTime(nominal, edgeWidth, nominal == on));
        truths.add(nominal + place);
      }
    }
    int frames = (int) ((4 + 1.713 * pulses) * framesPerSecond);
    times = new double[frames];
    values = new double[frames];
    double phase = random.nextDouble();
    double drift = 0.02 * random.nextGaussian();
    for (int n = 0; n < frames; n++) {
      double exposure = (n + phase) / framesPerSecond;
      times[n] = exposure + latency;
      double sum = 3 + drift * exposure + noiseKelvin * random.nextGaussian();
      for (int e = 0; e < truths.size() && truths.get(e) < exposure; e++) {
        sum += (e % 2 == 0 ? 1 : -1) * kelvin / 10 * step(exposure - truths.get(e), lag);
      }
      values[n] = sum;
    }
  }

  private static double step(double t, double lag) {
    double sum = 0;
    for (int k = 0; k < BODIES.length; k++) {
      double tau = BODIES[k];
      double fast = lag > 0 ? lag * Math.exp(-t / lag) : 0;
      sum += SHARES[k] * (1 - (tau * Math.exp(-t / tau) - fast) / (tau - lag));
    }
    return sum;
  }
}
