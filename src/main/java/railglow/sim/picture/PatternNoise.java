package railglow.sim.picture;

import java.util.Arrays;

/**
 * The parts of a camera's noise that pixels share or keep: fixed pattern, rows and columns that
 * wander over about a second, drift of the whole picture over a minute, warm-up, and what a shutter
 * event leaves behind.
 *
 * <p>Deterministic for a seed. Not thread-safe.
 */
final class PatternNoise {
  private static final double ROW_SECONDS = 1.0;
  private static final double DRIFT_SECONDS = 60;
  private static final double SHUTTER_SETTLE_SECONDS = 3;
  private static final double SHUTTER_SHIFT_KELVIN = 0.5;
  private final CameraSettings settings;
  private final GaussianNoise random;
  private final float[] fixed;
  private final double[] rows;
  private final double[] columns;
  private final float[] columnNow;
  private double drift;
  private double shutterShift;
  private double shutterAtSeconds;

  PatternNoise(CameraSettings settings, GaussianNoise random) {
    this.settings = settings;
    this.random = random;
    fixed = new float[settings.width() * settings.height()];
    rows = new double[settings.height()];
    columns = new double[settings.width()];
    columnNow = new float[settings.width()];
    random.addTo(fixed, (float) settings.fixedPatternKelvin());
    Arrays.setAll(rows, i -> settings.rowNoiseKelvin() * random.next());
    Arrays.setAll(columns, i -> settings.columnNoiseKelvin() * random.next());
  }

  /** The shutter has just opened again: a new pattern, mostly columns, and a common shift. */
  void afterShutter(double seconds) {
    float[] columnStep = new float[settings.width()];
    random.addTo(columnStep, (float) (0.8 * settings.fixedPatternKelvin()));
    random.addTo(fixed, (float) (0.2 * settings.fixedPatternKelvin()));
    for (int i = 0; i < fixed.length; i++) {
      fixed[i] += columnStep[i % columnStep.length];
    }
    shutterShift = SHUTTER_SHIFT_KELVIN * random.next();
    shutterAtSeconds = seconds;
  }

  /** Moves on by one frame. */
  void step(double seconds) {
    wander(rows, settings.rowNoiseKelvin(), seconds);
    wander(columns, settings.columnNoiseKelvin(), seconds);
    double share = Math.min(1, seconds / DRIFT_SECONDS);
    drift += -drift * share + settings.driftKelvin() * Math.sqrt(2 * share) * random.next();
  }

  private void wander(double[] states, double sigma, double seconds) {
    if (sigma == 0) {
      return;
    }
    double keep = Math.exp(-seconds / ROW_SECONDS);
    double kick = sigma * Math.sqrt(1 - keep * keep);
    for (int i = 0; i < states.length; i++) {
      states[i] = keep * states[i] + kick * random.next();
    }
  }

  void addTo(float[] values, double seconds) {
    double common =
        drift
            + settings.warmUpKelvin() * Math.exp(-seconds / settings.warmUpSeconds())
            + shutterShift * Math.exp(-(seconds - shutterAtSeconds) / SHUTTER_SETTLE_SECONDS);
    int width = settings.width();
    for (int x = 0; x < width; x++) {
      columnNow[x] = (float) (columns[x] + common);
    }
    for (int y = 0; y < rows.length; y++) {
      float row = (float) rows[y];
      int start = y * width;
      for (int x = 0; x < width; x++) {
        values[start + x] += fixed[start + x] + columnNow[x] + row;
      }
    }
  }
}
