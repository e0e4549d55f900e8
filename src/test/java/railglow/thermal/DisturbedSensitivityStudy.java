package railglow.thermal;

import java.io.IOException;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;

/**
 * Prints the smallest rise that is found with 95 % power where noise is not white: in invented
 * scenes, and in recorded noise with invented pulses and an invented source. Beside it that of an
 * observer who knows the source's width and time constant and the true noise of the cleaned cycles,
 * looks once, at the end, and only does not know the place. Arguments: runs per line (60), names of
 * scenes or RECORDED (WHITE, STRIPES, LINES, NOISY_LINES, SMOOTHED and RECORDED).
 */
public final class DisturbedSensitivityStudy {
  private static final int WIDTH = 64;
  private static final int HEIGHT = 48;
  private static final int CYCLES = 12;
  private static final double PERIOD = 2;
  private static final double BLUR = 2;
  private static final int MARGIN = 8;
  private static final int NEAR = 5;

  private DisturbedSensitivityStudy() {}

  public static void main(String[] args) throws IOException {
    int runs = args.length > 0 ? Integer.parseInt(args[0]) : 60;
    List<String> names =
        args.length > 1
            ? Arrays.asList(args).subList(1, args.length)
            : List.of("WHITE", "STRIPES", "LINES", "NOISY_LINES", "SMOOTHED", "RECORDED");
    System.out.println(
        "| scene | tau/P | runs | found with 95 % power | known noise | ratio | found in half |");
    System.out.println("|---|---|---|---|---|---|---|");
    for (String name : names) {
      for (double tau : new double[] {0, 0.25}) {
        if (name.equals("RECORDED")) {
          for (String recording : FalseAlarmStudy.RECORDED) {
            recorded(recording, Recording.read(recording), runs, tau);
          }
        } else {
          invented(NoiseScene.Kind.valueOf(name), runs, tau);
        }
      }
    }
  }

  private static void invented(NoiseScene.Kind kind, int runs, double tauPeriods) {
    DetectionSettings settings = DetectionSettings.usual(PERIOD, 0, 0.05, 4, CYCLES);
    FirstOrderResponse g = FirstOrderResponse.of(tauPeriods * PERIOD, PERIOD);
    double guess = 6 / (Math.sqrt(6) * g.size() * BLUR * Math.sqrt(Math.PI * CYCLES));
    SplittableRandom random = new SplittableRandom(17);
    double[] found = new double[runs];
    double[] known = new double[runs];
    for (int run = 0; run < runs; run++) {
      NoiseScene scene = new NoiseScene(kind, WIDTH, HEIGHT, 400_000 + run);
      double column = MARGIN + (WIDTH - 2 * MARGIN) * random.nextDouble();
      double row = MARGIN + (HEIGHT - 2 * MARGIN) * random.nextDouble();
      if (scene.badColumn() >= 0) {
        column = Math.max(MARGIN, Math.min(WIDTH - MARGIN, scene.badColumn())) + column % 1;
      }
      WhiteCycles signal =
          new WhiteCycles(WIDTH, HEIGHT, 0, 0)
              .with(
                  new WhiteCycles.Source(column, row, BLUR, guess, tauPeriods * PERIOD), 0, PERIOD);
      Trial trial = new Trial(settings, WIDTH, HEIGHT, g, column, row);
      for (int k = 0; k < CYCLES; k++) {
        trial.add(sum(scene.next(), signal.next()));
      }
      found[run] = trial.found();
      known[run] = trial.known();
    }
    print(kind.name() + " (K at 1 K a frame)", tauPeriods, guess, found, known);
  }

  /** Both, quarter by quarter. */
  static QuarterMeans sum(QuarterMeans a, QuarterMeans b) {
    return new QuarterMeans(
        a.cycle(),
        sum(a.q1(), b.q1()),
        sum(a.q2(), b.q2()),
        sum(a.q3(), b.q3()),
        sum(a.q4(), b.q4()),
        a.framesPerQuarter());
  }

  private static Plane sum(Plane a, Plane b) {
    float[] values = a.values().clone();
    for (int i = 0; i < values.length; i++) {
      values[i] += b.values()[i];
    }
    return new Plane(a.width(), a.height(), values);
  }

  private static void recorded(String name, Recording whole, int runs, double tauPeriods) {
    SplittableRandom random = new SplittableRandom(23);
    double[] found = new double[runs];
    double[] known = new double[runs];
    double guess = 0;
    for (int run = 0; run < runs; run++) {
      Recording.Pulsed pulsed = whole.pulsed(random, WIDTH, HEIGHT);
      Recording part = pulsed.part();
      double period = pulsed.period();
      double firstOn = pulsed.firstOn();
      int cycles = pulsed.cycles();
      double column = MARGIN + (WIDTH - 2 * MARGIN) * random.nextDouble();
      double row = MARGIN + (HEIGHT - 2 * MARGIN) * random.nextDouble();
      DetectionSettings settings = pulsed.settings(0);
      FirstOrderResponse g = FirstOrderResponse.of(tauPeriods * period, period);
      guess = guess > 0 ? guess : guess(part, settings, firstOn, g, cycles);
      WhiteCycles signal =
          new WhiteCycles(WIDTH, HEIGHT, 0, 0)
              .with(
                  new WhiteCycles.Source(column, row, BLUR, guess, tauPeriods * period), 0, period);
      QuarterMeans added = signal.next();
      Trial trial = new Trial(settings, WIDTH, HEIGHT, g, column, row);
      part.eachCycle(settings, firstOn, q -> trial.add(sum(q, added)));
      found[run] = trial.found();
      known[run] = trial.known();
    }
    print(name + " (recorded, counts)", tauPeriods, guess, found, known);
  }

  /** A rise of about six times the noise of this recording, from its cycles without a source. */
  private static double guess(
      Recording part, DetectionSettings settings, double firstOn, FirstOrderResponse g, int n) {
    Trial trial = new Trial(settings, WIDTH, HEIGHT, g, WIDTH / 2.0, HEIGHT / 2.0);
    part.eachCycle(settings, firstOn, trial::add);
    return 6 * trial.deviation() / (g.size() * BLUR * Math.sqrt(Math.PI * n));
  }

  private static void print(
      String name, double tauPeriods, double guess, double[] found, double[] known) {
    double rise = SensitivityStudy.power95(guess, found);
    double ideal = SensitivityStudy.power95(guess, known);
    double[] sorted = found.clone();
    Arrays.sort(sorted);
    System.out.printf(
        Locale.ROOT,
        "| %s | %.2f | %d | %.4g | %.4g | %.3f | %.4g |%n",
        name,
        tauPeriods,
        found.length,
        rise,
        ideal,
        rise / ideal,
        guess / sorted[sorted.length / 2]);
  }

  /** One run with a source: the detector, and the observer who knows width, delay and noise. */
  private static final class Trial {
    private final int width;
    private final int height;
    private final Detector detector;
    private final DetectionSettings settings;
    private final FirstOrderResponse response;
    private final double column;
    private final double row;
    private final MatchedFilter filter;
    private final DriftFreeCycles drift = new DriftFreeCycles();
    private final ChannelMoments moments;
    private double share;

    Trial(
        DetectionSettings settings,
        int width,
        int height,
        FirstOrderResponse response,
        double column,
        double row) {
      this.settings = settings;
      this.width = width;
      this.height = height;
      this.response = response;
      this.column = column;
      this.row = row;
      detector = new Detector(settings, width, height);
      filter = new MatchedFilter(width, height, BLUR);
      moments = new ChannelMoments(width * height);
    }

    void add(QuarterMeans q) {
      detector.addCycle(q);
      drift.next(q).ifPresent(this::observe);
      if (detector.cycles() >= settings.minCycles()) {
        share = Math.max(share, largest(detector.look().significance()) / detector.scoreToCall());
      }
    }

    private void observe(ReducedCycle cycle) {
      CommonParts.Removed i = CommonParts.remove(cycle.inPhase(), width, height, null);
      CommonParts.Removed c = CommonParts.remove(cycle.quadrature(), width, height, null);
      float[] filteredI = new float[width * height];
      float[] filteredC = new float[width * height];
      filter.apply(cycle.inPhase(), filteredI, i);
      filter.apply(cycle.quadrature(), filteredC, c);
      moments.add(filteredI, filteredC);
    }

    private double largest(Plane plane) {
      double most = 0;
      for (int y = (int) row - NEAR; y <= row + NEAR; y++) {
        for (int x = (int) column - NEAR; x <= column + NEAR; x++) {
          most = Math.max(most, plane.at(x, y));
        }
      }
      return most;
    }

    /** Largest share of the score asked for, over all looks. */
    double found() {
      return share;
    }

    /** Deviation of the best combination of both channels from cycle to cycle, typical pixel. */
    double deviation() {
      return 1 / Math.sqrt(weights()[2]);
    }

    /** Weights of the channels for the response, and its signal to noise ratio squared per unit. */
    private double[] weights() {
      double degrees = moments.cycles() - 1;
      double ii = median(moments.squaresI()) / degrees;
      double cc =
          median(moments.squaresC()) / degrees * PooledNoise.meanToScatter(moments.cycles());
      double u = response.inPhase() / response.size();
      double v = response.quadrature() / response.size();
      double square = u * u / ii + v * v / cc;
      return new double[] {u / ii, v / cc, square};
    }

    /** A median of sums of squares is below their mean by about 1 - 2/(9 n), cubed. */
    private double median(float[] squares) {
      double degrees = moments.cycles() - 1;
      double low = Math.pow(1 - 2 / (9 * degrees), 3);
      return Selection.median(squares.clone(), squares.length) / low;
    }

    double known() {
      drift.provisional().ifPresent(this::observe);
      Plane score = new Plane(width, height);
      double[] w = weights();
      for (int i = 0; i < score.values().length; i++) {
        double y = w[0] * moments.meanI()[i] + w[1] * moments.meanC()[i];
        score.values()[i] = (float) (y * Math.sqrt(moments.cycles() / w[2]));
      }
      return largest(score) / IdealObserver.threshold(width, height, BLUR, 0.05);
    }
  }
}
