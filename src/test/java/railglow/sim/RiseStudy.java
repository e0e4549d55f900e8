package railglow.sim;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import railglow.sim.heat.BoardHeat;
import railglow.sim.heat.PlacedPart;
import railglow.sim.picture.Reflection;
import railglow.sim.truth.TruthLog;
import railglow.thermal.HeatSource;
import railglow.thermal.Look;

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
        "| board | part | cycles | mK stated | 95 % | in phase | quadrature | tau s | width px |");
    System.out.println("|---|---|---|---|---|---|---|---|---|");
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
        "| %s | %s | %d | %.1f | %.1f to %.1f | %.1f | %.1f | %.2f | %.2f |%n",
        name,
        part,
        n,
        1000 * s.riseKelvin(),
        1000 * s.riseInterval95().low(),
        1000 * s.riseInterval95().high(),
        1000 * s.inPhaseKelvin(),
        1000 * s.quadratureKelvin(),
        s.timeConstantSeconds(),
        s.widthPixels());
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

  /** The picture of this heat without noise, long after it came to rest under a coat. */
  private static float[] seen(BenchScenario bench, BoardHeat heat) {
    int width = bench.camera().width();
    int height = bench.camera().height();
    float[] picture = new float[width * height];
    bench.board().newScene(heat, width, height, Reflection.NONE).render(1e6, picture);
    return picture;
  }
}
