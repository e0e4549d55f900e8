package railglow.thermal;

import java.util.Arrays;
import java.util.Locale;
import java.util.SplittableRandom;

/**
 * Prints how often a scene without heat shows a source anywhere at any look of a run, looks after
 * every cycle, nominal 5 %. Arguments: runs per line (300), width (64), height (48), cycles (16),
 * names of the scenes or RECORDED.
 */
public final class FalseAlarmStudy {
  private static final int PART_WIDTH = 56;
  private static final int PART_HEIGHT = 44;

  private FalseAlarmStudy() {}

  public static void main(String[] args) throws java.io.IOException {
    int runs = args.length > 0 ? Integer.parseInt(args[0]) : 300;
    int width = args.length > 1 ? Integer.parseInt(args[1]) : 64;
    int height = args.length > 2 ? Integer.parseInt(args[2]) : 48;
    int cycles = args.length > 3 ? Integer.parseInt(args[3]) : 16;
    System.out.printf(
        "False alarms per run, %d x %d pixels, looks after cycles 4 to %d, nominal 5 %%%n%n",
        width, height, cycles);
    System.out.println("| scene | runs | false alarms | rate | 95 % bounds | 5 % point of p |");
    System.out.println("|---|---|---|---|---|---|");
    for (NoiseScene.Kind kind : NoiseScene.Kind.values()) {
      if (args.length < 5 || Arrays.asList(args).contains(kind.name())) {
        double[] least = new double[runs];
        // runs know nothing of one another: on all cores the same numbers come out
        Arrays.parallelSetAll(
            least,
            run -> leastP(new NoiseScene(kind, width, height, 7_000 + run), width, height, cycles));
        print(kind.name(), least);
      }
    }
    if (args.length < 5 || Arrays.asList(args).contains("RECORDED")) {
      recorded(runs);
    }
  }

  static double leastP(NoiseScene scene, int width, int height, int cycles) {
    DetectionSettings settings = DetectionSettings.usual(2, 0, 0.05, 4, cycles);
    Detector detector = new Detector(settings, width, height);
    double least = 1;
    for (int k = 1; k <= cycles; k++) {
      detector.addCycle(scene.next());
      if (k >= 4) {
        Look look = detector.look();
        least = Math.min(least, look.strongest() == null ? 1 : look.strongest().familyWiseP());
      }
    }
    return least;
  }

  /** Real noise: pulses that never were, of many periods and phases, over parts of recordings. */
  private static void recorded(int runs) throws java.io.IOException {
    for (String name : RECORDED) {
      double[] least = recorded(Recording.read(name), runs);
      print(name + " (one recording, invented pulses: runs not independent)", least);
    }
  }

  static final String[] RECORDED = {"a_lepton3_static_489", "b_lepton3_flat_102"};

  static double[] recorded(Recording recording, int runs) {
    SplittableRandom random = new SplittableRandom(99);
    double[] least = new double[runs];
    for (int run = 0; run < runs; run++) {
      Recording.Pulsed pulsed = recording.pulsed(random, PART_WIDTH, PART_HEIGHT);
      least[run] = pulsed.part().leastP(pulsed.settings(0.95), pulsed.firstOn());
    }
    return least;
  }

  private static void print(String name, double[] least) {
    double[] sorted = least.clone();
    Arrays.sort(sorted);
    int alarms = (int) Arrays.stream(sorted).filter(p -> p <= 0.05).count();
    int n = sorted.length;
    System.out.printf(
        Locale.ROOT,
        "| %s | %d | %d | %.2f %% | %.2f to %.2f %% | %.3f |%n",
        name,
        n,
        alarms,
        100.0 * alarms / n,
        100 * bound(alarms, n, 0.025),
        100 * bound(alarms, n, 0.975),
        sorted[n / 20]);
  }

  /** Clopper and Pearson, Biometrika 26 (1934) 404. */
  static double bound(int hits, int n, double level) {
    if (level < 0.5) {
      return hits == 0
          ? 0
          : org.apache.commons.statistics.distribution.BetaDistribution.of(hits, n - hits + 1.0)
              .inverseCumulativeProbability(level);
    }
    return hits == n
        ? 1
        : org.apache.commons.statistics.distribution.BetaDistribution.of(hits + 1.0, n - hits)
            .inverseCumulativeProbability(level);
  }
}
