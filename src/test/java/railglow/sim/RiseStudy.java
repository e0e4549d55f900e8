package railglow.sim;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import railglow.sim.heat.BoardHeat;
import railglow.sim.heat.PlacedPart;
import railglow.sim.picture.BoardScene;
import railglow.sim.picture.CameraSettings;
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

  /** So finely the truth is followed in time; edges and quarters' bounds lie on it. */
  private static final int FINE_PER_SECOND = 50;

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

  /** The true swing of a part of a simulated board that began to warm some cycles ago. */
  public static double warmSwingKelvin(String board, String part) {
    BenchScenario bench = BenchScenarios.named(board).orElseThrow();
    return swingKelvin(bench, bench.board().part(part).orElseThrow(), 3, 7);
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
   * The true swing: the size of both channels of what the camera shows at a part, without noise and
   * in the mean over whole quarters between edges in time, the largest within two pixels of the
   * part's middle; mean of some cycles, a steady drift taken out. Frames of a run have no part in
   * it.
   */
  static double swingKelvin(BenchScenario bench, PlacedPart part, int firstCycle, int lastCycle) {
    CameraSettings camera = bench.camera();
    int width = camera.width();
    int height = camera.height();
    BenchWorld world =
        new BenchWorld(
            bench.withCamera(camera.withSize(width, height, FINE_PER_SECOND).withNoiseKelvin(0)),
            0,
            new TruthLog());
    world.receive("CURR 0.500;VOLT 1.000", 0);
    short[] counts = new short[width * height];
    float[] picture = new float[counts.length];
    BoardScene scene = bench.board().newScene(world.heat(), width, height, Reflection.NONE);
    int column = (int) Math.round(bench.board().column(part));
    int row = (int) Math.round(bench.board().row(part));
    LaggedQuarters[] places = new LaggedQuarters[25];
    Arrays.setAll(
        places,
        k -> new LaggedQuarters(camera.lagSeconds(), 1.0 / FINE_PER_SECOND, FINE_PER_SECOND / 2));
    int switched = 0;
    long end = ScenarioStudy.LEAD_IN + (lastCycle + 1) * 2 * SECOND;
    for (long n = 0; world.exposureNanos(n) <= end; n++) {
      long exposure = world.exposureNanos(n);
      switched = ScenarioStudy.switchOutput(world, exposure, switched, 2 * SECOND);
      world.takeFrame(exposure, counts);
      scene.render(1e-9 * exposure, picture);
      for (int k = 0; k < places.length; k++) {
        double kelvin = picture[(row - 2 + k / 5) * width + column - 2 + k % 5];
        places[k].take(kelvin, exposure >= ScenarioStudy.LEAD_IN);
      }
    }
    return Arrays.stream(places)
        .mapToDouble(place -> place.swing(firstCycle, lastCycle))
        .max()
        .orElseThrow();
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
