package railglow.sim.picture;

/**
 * Turns apparent rises into counts, frame after frame: detector lag, noise, patterns, the camera's
 * own smoothing, bad pixels. A count is 0.01 K, count 0 is -273.15 degrees Celsius.
 *
 * <p>The noise of a frame depends on seed and frame number only. Not thread-safe.
 */
public final class SimulatedCamera {
  private static final double COUNTS_PER_KELVIN = 100;
  private static final double ZERO_CELSIUS_KELVIN = 273.15;

  private final CameraSettings settings;
  private final long seed;
  private final double roomCelsius;
  private final PatternNoise patterns;
  private final int[] dead;
  private final int[] flickering;
  private final PictureLag detector;
  private final float[] smoothed;
  private boolean warm;
  private boolean shuttered;

  public SimulatedCamera(CameraSettings settings, long seed, double roomCelsius) {
    this.settings = settings;
    this.seed = seed;
    this.roomCelsius = roomCelsius;
    patterns = new PatternNoise(settings, GaussianNoise.of(seed, -1));
    int pixels = settings.width() * settings.height();
    detector = new PictureLag(pixels, settings.lagSeconds());
    smoothed = new float[pixels];
    GaussianNoise places = GaussianNoise.of(seed, -2);
    dead = places(places, settings.deadPixels(), pixels);
    flickering = places(places, settings.flickeringPixels(), pixels);
  }

  private static int[] places(GaussianNoise random, int count, int pixels) {
    int[] found = new int[count];
    for (int i = 0; i < count; i++) {
      found[i] = (int) (random.nextUniform() * pixels);
    }
    return found;
  }

  public CameraSettings settings() {
    return settings;
  }

  /** Mid-exposure of a frame, seconds after the camera's start. */
  public double exposureSeconds(long number) {
    return number / settings.framesPerSecond();
  }

  /** What becomes of a frame; the same for the same seed. */
  public FrameFate fate(long number) {
    if (inShutter(exposureSeconds(number))) {
      return FrameFate.SHUTTERED;
    }
    double draw = GaussianNoise.of(seed, 2 * number + 1).nextUniform();
    if (draw < settings.droppedShare()) {
      return FrameFate.DROPPED;
    }
    draw -= settings.droppedShare();
    if (draw < settings.repeatedShare() && number > 0) {
      return FrameFate.REPEATED;
    }
    draw -= settings.repeatedShare();
    return draw < settings.lateShare() ? FrameFate.LATE : FrameFate.SENT;
  }

  private boolean inShutter(double seconds) {
    double every = settings.shutterEverySeconds();
    return every > 0 && seconds >= every && seconds % every < settings.shutterSeconds();
  }

  /** From mid-exposure to the wire for a frame of this fate. */
  public double latencySeconds(FrameFate fate) {
    return settings.latencySeconds() + (fate == FrameFate.LATE ? settings.lateSeconds() : 0);
  }

  /**
   * Lets the detector follow the scene up to a time between frames, where the scene's slope
   * changes.
   *
   * @param seconds after the camera's start, ascending
   * @param apparentRise above the room then, kelvin; overwritten
   */
  public void see(double seconds, float[] apparentRise) {
    detector.follow(seconds, apparentRise);
  }

  /**
   * Takes the next frame. Must be called for every number in order, whatever its fate.
   *
   * @param apparentRise above the room, kelvin; overwritten
   * @param counts filled with the image
   */
  public void take(long number, float[] apparentRise, short[] counts) {
    double seconds = exposureSeconds(number);
    double interval = 1 / settings.framesPerSecond();
    boolean shut = inShutter(seconds);
    if (shuttered && !shut) {
      patterns.afterShutter(seconds);
    }
    shuttered = shut;
    patterns.step(interval);
    detector.follow(seconds, apparentRise);
    if (settings.noiseKelvin() > 0) {
      GaussianNoise.of(seed, 2 * number).addTo(apparentRise, (float) settings.noiseKelvin());
    }
    smooth(apparentRise);
    warm = true;
    patterns.addTo(apparentRise, seconds);
    damage(number, apparentRise);
    count(apparentRise, counts);
  }

  private void smooth(float[] values) {
    if (settings.smoothingWeight() < 1) {
      follow(smoothed, values, warm ? (float) settings.smoothingWeight() : 1);
    }
  }

  private static void follow(float[] state, float[] values, float weight) {
    for (int i = 0; i < values.length; i++) {
      state[i] += weight * (values[i] - state[i]);
      values[i] = state[i];
    }
  }

  private void damage(long number, float[] values) {
    for (int i = 0; i < dead.length; i++) {
      values[dead[i]] = i % 2 == 0 ? 40 : -20;
    }
    GaussianNoise random = GaussianNoise.of(seed, -10 - number);
    for (int pixel : flickering) {
      values[pixel] += random.nextUniform() < 0.5 ? 1.5f : 0;
    }
  }

  private void count(float[] values, short[] counts) {
    float offset = (float) ((roomCelsius + ZERO_CELSIUS_KELVIN) * COUNTS_PER_KELVIN + 0.5);
    float scale = (float) COUNTS_PER_KELVIN;
    for (int i = 0; i < values.length; i++) {
      int count = (int) (offset + scale * values[i]);
      counts[i] = (short) Math.max(0, Math.min(65535, count));
    }
  }
}
