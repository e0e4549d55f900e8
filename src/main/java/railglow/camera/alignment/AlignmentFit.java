package railglow.camera.alignment;

import java.util.Arrays;
import java.util.List;

/**
 * Fits latency and time constant to a pulsed resistor's warming, by least squares, with errors from
 * leaving out one eighth of the pulses at a time (jackknife), so that noise that hangs together is
 * accounted for. Pure.
 */
public final class AlignmentFit {
  private static final int LEAST_PULSES = 8;
  private static final int BLOCKS = 8;
  private static final double MAX_LATENCY = 0.6;
  private static final double MAX_LAG = 0.12;
  private static final double TELLING_SECONDS = 0.004;

  /** By how many of its own variances the fit must gain; 9 would be three standard errors. */
  private static final double TELLING_IMPROVEMENT = 16;

  private static final double LATENCY_STEP = 0.01;
  private static final double[] LAG_STARTS = {0, 0.01, 0.03, 0.08};
  private static final double DIFFERENCE = 5e-4;
  private static final double CONVERGED = 1e-6;
  private static final int ITERATIONS = 30;
  private static final double LEAST_SIGNAL_TO_NOISE = 5;
  private final List<EdgeTime> edges;
  private final double[] times;
  private final double[] values;
  private final double fixedLag;

  private AlignmentFit(List<EdgeTime> edges, double[] times, double[] values, double fixedLag) {
    this.edges = edges;
    this.times = times;
    this.values = values;
    this.fixedLag = fixedLag;
  }

  /**
   * Fits latency and time constant. The given time constant stays, and the latency is fitted alone,
   * unless the frames plainly ask for another one and tell it to 4 ms.
   *
   * @param edges in order of time, on and off in turn
   * @param times of the frames in seconds on the edges' scale, ascending: the arrivals with their
   *     jitter taken out, but not less any latency
   * @param values of the resistor in each frame, any unit
   * @param timeConstantSeconds what is known of the camera's time constant beforehand
   */
  public static Alignment fit(
      List<EdgeTime> edges, double[] times, double[] values, double timeConstantSeconds)
      throws AlignmentRefusedException {
    int pulses = (int) edges.stream().filter(EdgeTime::on).count();
    if (pulses < LEAST_PULSES) {
      throw new AlignmentRefusedException(
          "only " + pulses + " pulses; at least " + LEAST_PULSES + " are needed");
    }
    Alignment given = new AlignmentFit(edges, times, values, timeConstantSeconds).run(pulses);
    if (timeConstantSeconds > MAX_LAG) {
      return given;
    }
    Alignment both = new AlignmentFit(edges, times, values, Double.NaN).run(pulses);
    double better = times.length * (Math.pow(given.noise() / both.noise(), 2) - 1);
    boolean seen =
        both.timeConstantSeconds() < MAX_LAG && both.timeConstantErrorSeconds() <= TELLING_SECONDS;
    Alignment chosen = seen && better > TELLING_IMPROVEMENT ? both : given;
    return chosen.seeingTheTimeConstant(seen);
  }

  private Alignment run(int pulses) throws AlignmentRefusedException {
    boolean[] all = new boolean[times.length];
    Arrays.fill(all, true);
    WarmingModel whole = new WarmingModel(edges, times, values, all);
    double[] best = refine(whole, coarse(whole));
    double[] left = whole.residuals(best[0], best[1]);
    int freedom = times.length - whole.unknowns() - 2;
    double noise = Math.sqrt(squares(left) / Math.max(1, freedom));
    double rise = whole.rise(best[0]);
    if (!(Math.abs(rise) > LEAST_SIGNAL_TO_NOISE * noise)) {
      throw new AlignmentRefusedException(
          String.format(
              java.util.Locale.ROOT,
              "the resistor warms by %.3g against a noise of %.3g in one frame; give it more power"
                  + " or bring it closer to the camera",
              rise,
              noise));
    }
    double[][] parts = new double[BLOCKS][];
    for (int block = 0; block < BLOCKS; block++) {
      boolean[] used = without(block);
      parts[block] = refine(new WarmingModel(edges, times, values, used), best);
    }
    double edgeError = edgeError();
    return new Alignment(
        best[0],
        Math.hypot(jackknife(parts, 1, 0), edgeError),
        best[1],
        jackknife(parts, 0, 1),
        false,
        best[0] + best[1],
        Math.hypot(jackknife(parts, 1, 1), edgeError),
        rise,
        noise,
        pulses,
        times.length);
  }

  private double[] coarse(WarmingModel model) {
    double[] best = {0, 0};
    double least = Double.POSITIVE_INFINITY;
    double[] lags = Double.isNaN(fixedLag) ? LAG_STARTS : new double[] {fixedLag};
    for (double lag : lags) {
      for (double latency = 0; latency <= MAX_LATENCY; latency += LATENCY_STEP) {
        double sum = squares(model.residuals(latency, lag));
        if (sum < least) {
          least = sum;
          best = new double[] {latency, lag};
        }
      }
    }
    return best;
  }

  /** Gauss-Newton on the projected residuals, halving steps that lead uphill. */
  private double[] refine(WarmingModel model, double[] start) {
    double[] at = start.clone();
    double now = squares(model.residuals(at[0], at[1]));
    for (int i = 0; i < ITERATIONS; i++) {
      double[] step = step(model, at);
      double taken = 1;
      double[] next = moved(at, step, taken);
      double then = squares(model.residuals(next[0], next[1]));
      while (then > now && taken > 0.01) {
        taken /= 2;
        next = moved(at, step, taken);
        then = squares(model.residuals(next[0], next[1]));
      }
      if (!(then <= now)) {
        return at;
      }
      double change = Math.abs(next[0] - at[0]) + Math.abs(next[1] - at[1]);
      at = next;
      now = then;
      if (change < CONVERGED) {
        return at;
      }
    }
    return at;
  }

  private double[] step(WarmingModel model, double[] at) {
    double[] left = model.residuals(at[0], at[1]);
    double[] byLatency = derivative(model, at[0] - DIFFERENCE, at[1], at[0] + DIFFERENCE, at[1]);
    double low = Math.max(0, at[1] - DIFFERENCE);
    double[] byLag = derivative(model, at[0], low, at[0], low + 2 * DIFFERENCE);
    double aa = product(byLatency, byLatency);
    double ab = product(byLatency, byLag);
    double bb = product(byLag, byLag);
    double ra = product(byLatency, left);
    double rb = product(byLag, left);
    double determinant = aa * bb - ab * ab;
    boolean both = Double.isNaN(fixedLag) && determinant > 1e-9 * aa * bb;
    if (both) {
      double lagStep = -(aa * rb - ab * ra) / determinant;
      if (at[1] + lagStep >= 0) {
        return new double[] {-(bb * ra - ab * rb) / determinant, lagStep};
      }
    }
    double lagStep = both ? -at[1] : 0;
    return new double[] {-(ra + ab * lagStep) / aa, lagStep};
  }

  private static double[] derivative(
      WarmingModel model, double latencyA, double lagA, double latencyB, double lagB) {
    double[] before = model.residuals(latencyA, lagA);
    double[] after = model.residuals(latencyB, lagB);
    double width = latencyB - latencyA + lagB - lagA;
    for (int i = 0; i < before.length; i++) {
      after[i] = (after[i] - before[i]) / width;
    }
    return after;
  }

  private static double[] moved(double[] at, double[] step, double part) {
    return new double[] {at[0] + part * step[0], Math.max(0, at[1] + part * step[1])};
  }

  /** All frames but those of one block of cycles. */
  private boolean[] without(int block) {
    double[] starts = edges.stream().filter(EdgeTime::on).mapToDouble(EdgeTime::seconds).toArray();
    int from = block * starts.length / BLOCKS;
    int to = (block + 1) * starts.length / BLOCKS;
    double low = from == 0 ? Double.NEGATIVE_INFINITY : starts[from];
    double high = to == starts.length ? Double.POSITIVE_INFINITY : starts[to];
    boolean[] used = new boolean[times.length];
    for (int i = 0; i < used.length; i++) {
      used[i] = times[i] < low || times[i] >= high;
    }
    return used;
  }

  private static double jackknife(double[][] parts, double ofLatency, double ofLag) {
    double mean = 0;
    for (double[] part : parts) {
      mean += (ofLatency * part[0] + ofLag * part[1]) / parts.length;
    }
    double sum = 0;
    for (double[] part : parts) {
      double off = ofLatency * part[0] + ofLag * part[1] - mean;
      sum += off * off;
    }
    return Math.sqrt(sum * (parts.length - 1) / parts.length);
  }

  /** The edges may all lie at the same place between command and confirmation: no averaging. */
  private double edgeError() {
    double mean = edges.stream().mapToDouble(EdgeTime::widthSeconds).average().orElse(0);
    return mean / Math.sqrt(12);
  }

  private static double squares(double[] values) {
    return product(values, values);
  }

  private static double product(double[] a, double[] b) {
    double sum = 0;
    for (int i = 0; i < a.length; i++) {
      sum += a[i] * b[i];
    }
    return sum;
  }
}
