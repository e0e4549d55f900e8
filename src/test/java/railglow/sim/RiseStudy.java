package railglow.sim;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import railglow.sim.heat.BoardHeat;
import railglow.sim.heat.PlacedPart;
import railglow.sim.picture.BoardScene;
import railglow.sim.picture.Reflection;
import railglow.sim.truth.TruthLog;
import railglow.thermal.HeatSource;
import railglow.thermal.Look;
import railglow.thermal.RiseByModel;

/**
 * Prints the rise that is stated for the part at fault of simulated boards after several cycles, in
 * invented time, beside the truth under steady power. Arguments: cycles of the run (40), names of
 * boards.
 */
public final class RiseStudy {
  private static final long SECOND = 1_000_000_000L;

  private RiseStudy() {}

  public static void main(String[] args) {
    int cycles = args.length > 0 ? Integer.parseInt(args[0]) : 40;
    List<String> names =
        args.length > 1
            ? Arrays.asList(args).subList(1, args.length)
            : List.of("hx12", "two-leaks", "close-leaks", "warm-path");
    System.out.println(
        "| board | part | cycles | mK swing | 95 % | mK settled | 95 % | models | tau s | width px |");
    System.out.println("|---|---|---|---|---|---|---|---|---|---|");
    for (String name : names) {
      BenchScenario bench = BenchScenarios.named(name).orElseThrow();
      List<Look> looks = ScenarioStudy.looks(bench, 1, 0.5, 40, cycles);
      for (Look look : looks) {
        int n = look.cycles();
        if (n == 5 || n == 8 || n == 11 || n == 15 || n == 20 || n == 30 || n == 40) {
          for (HeatSource s : look.sources()) {
            line(name, ScenarioStudy.nearest(bench, s), n, s);
          }
        }
      }
      for (String part : bench.faultyParts()) {
        PlacedPart placed = bench.board().part(part).orElseThrow();
        System.out.printf(
            Locale.ROOT,
            "%s %s truth of the swing in cycles 5 to 20: %.1f mK%n",
            name,
            part,
            1000 * swingKelvin(bench, placed, 5, 20));
        for (int seconds : new int[] {5, 20, 60, 120}) {
          System.out.printf(
              Locale.ROOT,
              "%s %s truth after %d s: %.1f mK%n",
              name,
              part,
              seconds,
              1000 * steadyRiseKelvin(bench, placed, seconds));
        }
      }
    }
  }

  private static void line(String name, String part, int n, HeatSource s) {
    System.out.printf(
        Locale.ROOT,
        "| %s | %s | %d | %.1f | %.1f to %.1f | %.1f | %.1f to %.1f | %s | %.2f | %.2f |%n",
        name,
        part,
        n,
        1000 * s.swingKelvin(),
        1000 * s.swingInterval95().low(),
        1000 * s.swingInterval95().high(),
        1000 * s.riseKelvin(),
        1000 * s.riseInterval95().low(),
        1000 * s.riseInterval95().high(),
        models(s),
        s.timeConstantSeconds(),
        s.widthPixels());
  }

  private static String models(HeatSource source) {
    List<String> words = new ArrayList<>();
    for (RiseByModel model : source.models()) {
      words.add(
          String.format(
              Locale.ROOT,
              "%s %.1f (%.1f to %.1f)",
              model.model(),
              1000 * model.kelvin(),
              1000 * model.interval95().low(),
              1000 * model.interval95().high()));
    }
    return String.join(", ", words);
  }

  /** What the camera sees at a part after so many seconds of steady power, from rest. */
  static double steadyRiseKelvin(BenchScenario bench, PlacedPart part, int seconds) {
    int width = bench.camera().width();
    int height = bench.camera().height();
    BenchWorld world = new BenchWorld(bench, 0, new TruthLog());
    world.receive("CURR 0.500;VOLT 1.000", 0);
    world.receive("OUTP ON", 0);
    short[] counts = new short[width * height];
    for (long n = 0; world.exposureNanos(n) < seconds * SECOND; n++) {
      world.takeFrame(world.exposureNanos(n), counts);
    }
    int pixel =
        (int) Math.round(bench.board().row(part)) * width
            + (int) Math.round(bench.board().column(part));
    BoardHeat cold = bench.board().newHeat(bench.roomCelsius());
    return seen(bench, world.heat())[pixel] - seen(bench, cold)[pixel];
  }

  /**
   * The size of what the camera would see without noise at a part in step with pulses, through the
   * board's coat, the largest within two pixels of its middle: mean of some cycles, a steady drift
   * taken out.
   */
  static double swingKelvin(BenchScenario bench, PlacedPart part, int firstCycle, int lastCycle) {
    int width = bench.camera().width();
    BenchWorld world = new BenchWorld(bench, 0, new TruthLog());
    world.receive("CURR 0.500;VOLT 1.000", 0);
    short[] counts = new short[width * bench.camera().height()];
    int column = (int) Math.round(bench.board().column(part));
    int row = (int) Math.round(bench.board().row(part));
    double[][][] quarters = new double[lastCycle + 1][4][25];
    int[][] frames = new int[lastCycle + 1][4];
    float[] picture = new float[counts.length];
    BoardScene scene =
        bench.board().newScene(world.heat(), width, bench.camera().height(), Reflection.NONE);
    int switched = 0;
    for (long n = 0; ; n++) {
      long exposure = world.exposureNanos(n);
      switched = ScenarioStudy.switchOutput(world, exposure, switched, 2 * SECOND);
      world.takeFrame(exposure, counts);
      scene.render(1e-9 * exposure, picture);
      long since = exposure - ScenarioStudy.LEAD_IN;
      int cycle = (int) Math.floorDiv(since, 2 * SECOND);
      if (cycle > lastCycle) {
        break;
      }
      if (cycle >= 0) {
        int quarter = (int) (Math.floorMod(since, 2 * SECOND) * 2 / SECOND);
        for (int k = 0; k < 25; k++) {
          int pixel = (row - 2 + k / 5) * width + column - 2 + k % 5;
          quarters[cycle][quarter][k] += picture[pixel];
        }
        frames[cycle][quarter]++;
      }
    }
    double largest = 0;
    for (int k = 0; k < 25; k++) {
      double inPhase = 0;
      double quadrature = 0;
      for (int cycle = firstCycle; cycle <= lastCycle; cycle++) {
        double[] q = new double[4];
        for (int j = 0; j < 4; j++) {
          q[j] = quarters[cycle][j][k] / frames[cycle][j];
        }
        inPhase += (q[1] + q[2] - q[0] - q[3]) / 2;
        quadrature += (q[2] + q[3] - q[0] - q[1]) / 2;
      }
      int cycles = lastCycle - firstCycle + 1;
      double drift =
          (mean(quarters[lastCycle], frames[lastCycle], k)
                  - mean(quarters[firstCycle], frames[firstCycle], k))
              / (cycles - 1);
      largest = Math.max(largest, Math.hypot(inPhase / cycles, quadrature / cycles - drift / 2));
    }
    return largest;
  }

  private static double mean(double[][] quarters, int[] frames, int k) {
    double sum = 0;
    for (int j = 0; j < 4; j++) {
      sum += quarters[j][k] / frames[j] / 4;
    }
    return sum;
  }

  /** The picture of this heat without noise, long after it came to rest under a coat. */
  private static float[] seen(BenchScenario bench, BoardHeat heat) {
    int width = bench.camera().width();
    int height = bench.camera().height();
    float[] picture = new float[width * height];
    bench.board().newScene(heat, width, height, Reflection.NONE).render(1e6, picture);
    return picture;
  }
}
