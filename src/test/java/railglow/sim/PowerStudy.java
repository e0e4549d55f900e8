package railglow.sim;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.SplittableRandom;
import railglow.pulse.PulseOrder;
import railglow.run.PowerScale;
import railglow.sim.circuit.LoadBranch;
import railglow.sim.heat.PlacedPart;
import railglow.thermal.Look;

/**
 * Watts seen in the power map against watts that the fault truly takes, for leaks of any strength
 * in small parts anywhere on the simulated board, and how often the stated interval holds the
 * truth. Needed: the error of the scale with which 95 % would. Prints the table of
 * docs/detection.md. Arguments: runs a line (60), cycles (12), first seed (0).
 */
final class PowerStudy {
  private static final double SUPPLY_OHMS = 0.12;
  private static final double NORMAL_OHMS = 45;
  private static final double NORMAL_95 = 1.96;

  private PowerStudy() {}

  /** What one run says, and what is true. */
  private record Seen(double watts, double noiseWatts, double trulyWatts, double scaleError) {
    double share() {
      return watts / trulyWatts;
    }

    boolean covered() {
      double sigma = Math.hypot(noiseWatts, scaleError * watts);
      return Math.abs(watts - trulyWatts) <= NORMAL_95 * sigma;
    }
  }

  public static void main(String[] arguments) {
    int runs = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 60;
    int cycles = arguments.length > 1 ? Integer.parseInt(arguments[1]) : 12;
    int first = arguments.length > 2 ? Integer.parseInt(arguments[2]) : 0;
    System.out.println(
        "| side | plate | other parts | runs | with a map | seen over truth, mean | least | most | spread | error"
            + " stated | needed | intervals that hold the truth |");
    System.out.println("|---|---|---|---|---|---|---|---|---|---|---|---|");
    for (boolean bottom : new boolean[] {false, true}) {
      Seen[][] of = new Seen[runs][];
      Arrays.parallelSetAll(of, k -> seen(first + k, bottom, cycles));
      for (boolean stated : new boolean[] {true, false}) {
        line(bottom, stated, PowerScale.CLEAR, of);
        line(bottom, stated, PowerScale.BESIDE_OTHERS, of);
      }
    }
  }

  private static void line(boolean bottom, boolean stated, double scaleError, Seen[][] of) {
    List<Seen> all = new ArrayList<>();
    int runs = 0;
    for (Seen[] both : of) {
      Seen one = both[stated ? 0 : 1];
      if (one.scaleError == scaleError) {
        runs++;
        Optional.of(one).filter(seen -> !Double.isNaN(seen.watts)).ifPresent(all::add);
      }
    }
    double mean = all.stream().mapToDouble(Seen::share).average().orElse(Double.NaN);
    double variance =
        all.stream().mapToDouble(s -> Math.pow(s.share() - mean, 2)).average().orElse(Double.NaN);
    System.out.printf(
        Locale.ROOT,
        "| %s | %s | %s | %d | %d | %.2f | %.2f | %.2f | %.2f | %.2f | %.2f | %.3f |%n",
        bottom ? "far" : "near",
        stated ? "stated" : "not stated",
        scaleError == PowerScale.CLEAR ? "2 mm away or more" : "nearer",
        runs,
        all.size(),
        mean,
        all.stream().mapToDouble(Seen::share).min().orElse(Double.NaN),
        all.stream().mapToDouble(Seen::share).max().orElse(Double.NaN),
        Math.sqrt(variance),
        scaleError,
        needed(all),
        all.stream().filter(Seen::covered).count() / (double) all.size());
  }

  /** Where pixel noise is nothing beside it. */
  private static double needed(List<Seen> all) {
    double[] off = all.stream().mapToDouble(s -> Math.abs(1 / s.share() - 1)).sorted().toArray();
    return off[(int) Math.floor(0.95 * (off.length - 1))] / NORMAL_95;
  }

  /** With the plate stated, and without. */
  private static Seen[] seen(int seed, boolean bottom, int cycles) {
    SplittableRandom random = new SplittableRandom(seed);
    double ohms = Math.exp(random.nextDouble(Math.log(5), Math.log(25)));
    double x = random.nextDouble(30e-3, 100e-3);
    double y = random.nextDouble(20e-3, 60e-3);
    BenchScenario base = BenchScenarios.named("two-leaks").orElseThrow().withSeed(seed);
    List<PlacedPart> parts = new ArrayList<>(base.board().parts());
    double scaleError = PowerScale.relativeError(1.6, clearMillimetres(parts, x, y));
    PlacedPart leak = PlacedPart.of("X1", x, y, 1.6e-3, 0.8e-3, 0.8e-3, 60_000, 0.9);
    parts.add(bottom ? leak.onBottom() : leak);
    BenchScenario bench =
        base.withBoard(base.board().withParts(parts))
            .withCircuit(
                base.circuit()
                    .withBranches(
                        List.of(
                            LoadBranch.of(BenchScenarios.ALL_OVER_THE_BOARD, NORMAL_OHMS),
                            LoadBranch.fault("X1", ohms))));
    Look look = new BenchRun(bench, PulseStudy.sequence(PulseOrder.SQUARE, cycles)).toTheEnd();
    double volts = 1 / (1 + SUPPLY_OHMS * (1 / NORMAL_OHMS + 1 / ohms));
    double truly = volts * volts / ohms;
    return new Seen[] {
      map(look, bench, true, truly, scaleError), map(look, bench, false, truly, scaleError)
    };
  }

  /** To the nearest other part on the side that is looked at. */
  private static double clearMillimetres(List<PlacedPart> parts, double x, double y) {
    return 1e3
        * parts.stream()
            .filter(PlacedPart::onTop)
            .mapToDouble(
                part ->
                    Math.hypot(
                        Math.max(0, Math.abs(x - part.xMetres()) - part.widthMetres() / 2),
                        Math.max(0, Math.abs(y - part.yMetres()) - part.heightMetres() / 2)))
            .min()
            .orElse(Double.POSITIVE_INFINITY);
  }

  private static Seen map(
      Look look, BenchScenario bench, boolean stated, double truly, double scaleError) {
    Seen none = new Seen(Double.NaN, Double.NaN, truly, scaleError);
    if (look.sources().isEmpty()) {
      return none;
    }
    return SeparationStudy.powerMap(look, bench, stated)
        .map(m -> new Seen(m.seenWatts(), m.noiseWatts(), truly, scaleError))
        .orElse(none);
  }
}
