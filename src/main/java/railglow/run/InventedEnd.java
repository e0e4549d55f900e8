package railglow.run;

import java.util.Map;
import java.util.Random;
import railglow.journal.RunHeader;
import railglow.run.reduction.Reduced;
import railglow.thermal.CycleTimes;
import railglow.thermal.DetectionSettings;
import railglow.thermal.Detector;
import railglow.thermal.Look;
import railglow.thermal.Plane;
import railglow.thermal.QuarterMeans;

/**
 * What a run could end with: noise and one clear spot, in which the run's own method is used and
 * which has the size of its pictures. For a rehearsal; never shown. Pure.
 */
public final class InventedEnd {
  private static final int WIDTH = 64;
  private static final int HEIGHT = 48;
  private static final long SEED = 16;
  private static final int MOST_CYCLES = 12;
  private static final double NOISE_KELVIN = 0.02;
  private static final double RISE_KELVIN = 1;
  private static final double SPOT_PIXELS = 2;

  private InventedEnd() {}

  /** Detects in a small picture and repeats its planes over one of the run's size. */
  public static Reduced of(RunHeader header) {
    DetectionSettings own = header.detection();
    int cycles = Math.min(own.minCycles(), MOST_CYCLES);
    DetectionSettings settings =
        new DetectionSettings(
            own.periodSeconds(),
            own.cameraTimeConstantSeconds(),
            own.familyWiseError(),
            Math.min(cycles, 2),
            cycles,
            own.filterSigmasPixels(),
            own.bodyTimeConstantsSeconds(),
            own.coded());
    Detector detector = new Detector(settings, WIDTH, HEIGHT);
    Random random = new Random(SEED);
    for (int cycle = 0; cycle < cycles; cycle++) {
      detector.addCycle(
          new QuarterMeans(
                  cycle,
                  quarter(random, 0),
                  quarter(random, RISE_KELVIN),
                  quarter(random, RISE_KELVIN),
                  quarter(random, 0),
                  new int[] {1, 1, 1, 1})
              .at(times(own.periodSeconds())));
      detector.look();
    }
    Look look = detector.look();
    int width = header.camera().width();
    int height = header.camera().height();
    return new Reduced(
        new Look(
            look.cycles(),
            look.sources(),
            look.refused(),
            look.strongest(),
            look.upperLimitKelvin(),
            repeated(look.inPhase(), width, height),
            repeated(look.quadrature(), width, height),
            repeated(look.significance(), width, height),
            look.oneLag()),
        repeated(detector.trust(), width, height),
        repeated(quarter(random, RISE_KELVIN), width, height),
        cycles,
        0,
        Map.of("outside", 1),
        header.sequence().levelVolts(),
        header.sequence().maxAmperes(),
        header.sequence().levelVolts() * header.sequence().maxAmperes());
  }

  private static Plane quarter(Random random, double riseKelvin) {
    Plane plane = new Plane(WIDTH, HEIGHT);
    for (int row = 0; row < HEIGHT; row++) {
      for (int column = 0; column < WIDTH; column++) {
        double away = Math.hypot(column - WIDTH / 2.0, row - HEIGHT / 2.0) / SPOT_PIXELS;
        double spot = riseKelvin * Math.exp(-away * away / 2);
        plane.set(column, row, (float) (spot + NOISE_KELVIN * random.nextGaussian()));
      }
    }
    return plane;
  }

  private static Plane repeated(Plane small, int width, int height) {
    Plane large = new Plane(width, height);
    for (int row = 0; row < height; row++) {
      for (int column = 0; column < width; column++) {
        large.set(column, row, small.at(column % WIDTH, row % HEIGHT));
      }
    }
    return large;
  }

  /** One frame early in each quarter, clear of the edges. */
  private static CycleTimes times(double periodSeconds) {
    double[][] frames = new double[4][1];
    for (int quarter = 0; quarter < 4; quarter++) {
      frames[quarter][0] = (quarter + 0.4) / 4 * periodSeconds;
    }
    double[] switches = {periodSeconds / 4, 3 * periodSeconds / 4};
    return new CycleTimes(periodSeconds, false, false, switches, frames);
  }
}
