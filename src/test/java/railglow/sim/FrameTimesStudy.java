package railglow.sim;

import java.util.Locale;
import railglow.sim.heat.PlacedPart;
import railglow.sim.picture.CameraSettings;
import railglow.sim.truth.TruthLog;
import railglow.thermal.HeatSource;
import railglow.thermal.Look;

/**
 * Prints what is told of a place's swing for all ways in which frames can stand to the edges of the
 * pulses, beside the truth: of bodies of first order in white noise, and of C37 on hx12. A run goes
 * through the reduction of every run, in invented time. Arguments: runs at each way (2), of hx12
 * (1; 0 leaves it out).
 */
public final class FrameTimesStudy {
  private static final int PHASES = 10;
  private static final int CYCLES = 8;
  private static final double[] TAUS = {0, 0.05, 0.2, 0.6, 2};
  private static final double SWING_KELVIN = 0.2;
  private static final double NOISE_KELVIN = 0.05;

  private FrameTimesStudy() {}

  public static void main(String[] args) {
    int runs = args.length > 0 ? Integer.parseInt(args[0]) : 2;
    int ofBoard = args.length > 1 ? Integer.parseInt(args[1]) : 1;
    System.out.println(
        "| place | frames a second | lag ms | edges late ms | runs | told over truth, mean | least"
            + " | most | spread | width of the interval | intervals that hold the truth |");
    System.out.println("|---|---|---|---|---|---|---|---|---|---|---|");
    for (double tau : runs > 0 ? TAUS : new double[0]) {
      String name = String.format(Locale.ROOT, "body of %.2f s", tau);
      line(name, 9, 0.01, 0.002, runs, tau);
      line(name, 9, 0.12, 0.002, runs, tau);
      line(name, 25, 0.01, 0.002, runs, tau);
      line(name, 25, 0.01, 0.020, runs, tau);
      line(name, 60, 0.01, 0.002, runs, tau);
    }
    BenchScenario bench = BenchScenarios.hx12();
    PlacedPart part = bench.board().part("C37").orElseThrow();
    if (ofBoard > 0) {
      double truth = RiseStudy.swingKelvin(bench, part, 3, 7);
      for (double fps : new double[] {9, 25}) {
        System.out.println(ofBoard(bench, fps, truth, ofBoard, false));
        System.out.println(ofBoard(bench, fps, truth, ofBoard, true));
      }
    }
  }

  private static void line(String name, double fps, double lag, double late, int runs, double tau) {
    ToldOverTruth told = new ToldOverTruth();
    double share = WarmedBody.swing(tau, lag, PhasedRun.PERIOD_SECONDS);
    for (int phase = 0; phase < PHASES; phase++) {
      for (int seed = 0; seed < runs; seed++) {
        PhasedRun run =
            new PhasedRun(
                WarmedScene.WIDTH,
                WarmedScene.HEIGHT,
                fps,
                lag,
                (double) phase / PHASES,
                late,
                CYCLES);
        WarmedScene scene =
            new WarmedScene(
                WarmedBody.fromRest(tau, lag, PhasedRun.PERIOD_SECONDS, late),
                run.startSeconds(),
                SWING_KELVIN / share,
                NOISE_KELVIN,
                1000L * phase + seed);
        Look look = run.look(scene);
        add(told, look, SWING_KELVIN);
      }
    }
    System.out.printf(
        Locale.ROOT,
        "| %s | %.0f | %.0f | %.0f | %s |%n",
        name,
        fps,
        1000 * lag,
        1000 * late,
        columns(told));
  }

  private static void add(ToldOverTruth told, Look look, double truthKelvin) {
    HeatSource source = look.sources().get(0);
    told.add(source.swingKelvin(), source.swingInterval95(), truthKelvin);
  }

  private static String columns(ToldOverTruth told) {
    return String.format(
        Locale.ROOT,
        "%d | %.3f | %.3f | %.3f | %.3f | %.3f | %.3f",
        told.runs(),
        told.mean(),
        told.least(),
        told.most(),
        told.spread(),
        told.intervalWidth(),
        (double) told.holds() / told.runs());
  }

  private static String ofBoard(
      BenchScenario bench, double fps, double truth, int runs, boolean fromCold) {
    ToldOverTruth told = new ToldOverTruth();
    CameraSettings camera =
        bench.camera().withSize(bench.camera().width(), bench.camera().height(), fps);
    double late = 0.002;
    for (int phase = 0; phase < PHASES; phase++) {
      for (int seed = 0; seed < runs; seed++) {
        PhasedRun run =
            new PhasedRun(
                camera.width(),
                camera.height(),
                fps,
                camera.lagSeconds(),
                (double) phase / PHASES,
                late,
                CYCLES);
        BenchScene scene =
            new BenchScene(bench.withCamera(camera).withSeed(10L * phase + seed + 1));
        Look look = fromCold ? run.lookFromCold(scene) : run.look(scene);
        add(told, look, truth);
      }
    }
    return String.format(
        Locale.ROOT,
        "| C37 of hx12%s | %.0f | %.0f | %.0f | %s |",
        fromCold ? " from cold" : "",
        fps,
        1000 * camera.lagSeconds(),
        1000 * late,
        columns(told));
  }

  /** The simulated bench. */
  private static final class BenchScene implements PhasedRun.Scene {
    private final BenchWorld world;

    BenchScene(BenchScenario bench) {
      world = new BenchWorld(bench, 0, new TruthLog());
      world.receive("CURR 0.500;VOLT 1.000", 0);
    }

    @Override
    public void switched(boolean on, long nanos) {
      world.receive(on ? "OUTP ON" : "OUTP OFF", nanos);
    }

    @Override
    public void frameAt(long nanos, short[] counts) {
      world.takeFrame(nanos, counts);
    }
  }
}
