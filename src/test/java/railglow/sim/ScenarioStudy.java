package railglow.sim;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import railglow.sim.heat.PlacedPart;
import railglow.sim.truth.TruthLog;
import railglow.thermal.CountSamples;
import railglow.thermal.DetectionSettings;
import railglow.thermal.Detector;
import railglow.thermal.HeatSource;
import railglow.thermal.Look;
import railglow.thermal.QuarterAccumulator;
import railglow.thermal.RefusedSource;

/**
 * Prints what is called on each simulated board, in invented time: when the part at fault is first
 * called, and what else is at the cap. Arguments: cap in cycles (30), names of boards (all).
 */
public final class ScenarioStudy {
  private static final long SECOND = 1_000_000_000L;
  static final long LEAD_IN = 2 * SECOND;
  private static final double PERIOD = 2;

  private ScenarioStudy() {}

  public static void main(String[] args) {
    int cap = args.length > 0 ? Integer.parseInt(args[0]) : 30;
    List<String> names =
        args.length > 1
            ? Arrays.asList(args).subList(1, args.length)
            : List.of(
                "hx12",
                "dead-short",
                "healthy",
                "hx12-mirrored",
                "two-leaks",
                "warm-path",
                "short-in-chip",
                "leaky-junction",
                "drifting");
    System.out.println(
        "| board | at fault | first called at cycle | called at the cap | refused |");
    System.out.println("|---|---|---|---|---|");
    for (String name : names) {
      BenchScenario bench = BenchScenarios.named(name).orElseThrow();
      List<Look> looks = looks(bench, 1, 0.5, cap);
      Look last = looks.get(looks.size() - 1);
      System.out.printf(
          Locale.ROOT,
          "| %s | %s | %s | %s | %s |%n",
          name,
          String.join(", ", bench.faultyParts()),
          firstCalls(bench, looks),
          described(bench, last.sources()),
          refusals(bench, last.refused()));
    }
  }

  /** Looks after every cycle from the fifth on. */
  static List<Look> looks(BenchScenario bench, double volts, double amperes, int cap) {
    return looks(bench, volts, amperes, cap, cap);
  }

  /** The same of a run that is stopped before its cap. */
  static List<Look> looks(BenchScenario bench, double volts, double amperes, int cap, int cycles) {
    DetectionSettings settings = DetectionSettings.usual(PERIOD, 0.01, 0.05, 5, cap);
    int width = bench.camera().width();
    int height = bench.camera().height();
    Detector detector = new Detector(settings, width, height);
    QuarterAccumulator quarters = new QuarterAccumulator(width, height, 0.01);
    BenchWorld world = new BenchWorld(bench, 0, new TruthLog());
    world.receive(String.format(Locale.ROOT, "CURR %.3f;VOLT %.3f", amperes, volts), 0);
    short[] counts = new short[width * height];
    List<Look> looks = new ArrayList<>();
    FramesOfCycle frames = new FramesOfCycle();
    long period = Math.round(PERIOD * SECOND);
    int cycle = -1;
    int switched = 0;
    for (long n = 0; detector.cycles() < cycles; n++) {
      long exposure = world.exposureNanos(n);
      switched = switchOutput(world, exposure, switched, period);
      world.takeFrame(exposure + SECOND / 50, counts);
      long since = exposure - LEAD_IN;
      int now = (int) Math.floorDiv(since, period);
      if (now != cycle) {
        if (cycle >= 0 && quarters.eachQuarterHas(4)) {
          detector.addCycle(
              quarters
                  .finish(cycle)
                  .at(frames.take(PERIOD, false, false, PERIOD / 4, 3 * PERIOD / 4)));
          if (detector.cycles() >= settings.minCycles()) {
            looks.add(detector.look());
          }
        } else {
          quarters.reset();
        }
        cycle = now;
        frames.reset();
      }
      double quarter = 4.0 * Math.floorMod(since, period) / period;
      boolean transition = Math.abs(quarter - 1) < 0.1 || Math.abs(quarter - 3) < 0.1;
      if (now >= 0 && !transition) {
        quarters.add(1 + (int) quarter, new CountSamples(width, height, counts.clone()));
        frames.note(1 + (int) quarter, 1e-9 * Math.floorMod(since, period));
      }
    }
    return looks;
  }

  /** Switches at every edge up to a time; on from a quarter to three quarters of a cycle. */
  static int switchOutput(BenchWorld world, long until, int switched, long period) {
    int next = switched;
    while (LEAD_IN + (2L * next + 1) * period / 4 <= until) {
      world.receive(next % 2 == 0 ? "OUTP ON" : "OUTP OFF", LEAD_IN + (2L * next + 1) * period / 4);
      next++;
    }
    return next;
  }

  private static String firstCalls(BenchScenario bench, List<Look> looks) {
    List<String> calls = new ArrayList<>();
    for (String faulty : bench.faultyParts()) {
      String part = visible(faulty);
      int first =
          looks.stream()
              .filter(look -> look.sources().stream().anyMatch(s -> nearest(bench, s).equals(part)))
              .mapToInt(Look::cycles)
              .findFirst()
              .orElse(-1);
      calls.add(first < 0 ? "not called" : Integer.toString(first));
    }
    return String.join(", ", calls);
  }

  /**
   * The part whose outline is next to a source; of several that it lies on, the one whose middle
   * is. What lies under a chip has the chip's name.
   */
  static String nearest(BenchScenario bench, HeatSource source) {
    double x = bench.board().view().xMillimetres(source.column(), source.row()) * 1e-3;
    double y = bench.board().view().yMillimetres(source.column(), source.row()) * 1e-3;
    return visible(
        bench.board().parts().stream()
            .min(
                Comparator.comparingDouble((PlacedPart part) -> outside(part, x, y))
                    .thenComparingDouble(
                        part -> Math.hypot(part.xMetres() - x, part.yMetres() - y)))
            .orElseThrow()
            .name());
  }

  private static double outside(PlacedPart part, double x, double y) {
    return Math.hypot(
        Math.max(0, Math.abs(x - part.xMetres()) - part.widthMetres() / 2),
        Math.max(0, Math.abs(y - part.yMetres()) - part.heightMetres() / 2));
  }

  private static String visible(String part) {
    return part.replaceFirst("[.].*", "");
  }

  private static String described(BenchScenario bench, List<HeatSource> sources) {
    List<String> words = new ArrayList<>();
    for (HeatSource s : sources) {
      words.add(
          String.format(
              Locale.ROOT,
              "%s %.1f mK (%.0f, %.0f) I %.1f C %.1f width %.1f p %.0e",
              nearest(bench, s),
              1000 * s.riseKelvin(),
              s.column(),
              s.row(),
              1000 * s.inPhaseKelvin(),
              1000 * s.quadratureKelvin(),
              s.widthPixels(),
              s.familyWiseP()));
    }
    return String.join("; ", words);
  }

  private static String refusals(BenchScenario bench, List<RefusedSource> refused) {
    List<String> words = new ArrayList<>();
    for (RefusedSource r : refused) {
      words.add(described(bench, List.of(r.source())) + ": " + r.reason().words());
    }
    return String.join("; ", words);
  }
}
