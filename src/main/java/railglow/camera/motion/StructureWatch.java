package railglow.camera.motion;

/**
 * Tells when a scene's own structure goes missing at once. A camera's fixed pattern stays where it
 * is and may be stronger than the structure of a plain board: a board pushed out of view then still
 * looks much like the reference, and only a part of it is missing. Heat that comes up makes parts
 * differ too, but over seconds. Not thread-safe.
 */
final class StructureWatch {
  /** Of the reference's power; boards that warm change less within the time remembered. */
  private static final double SUDDEN = 0.04;

  private static final double SIGMAS = 8;

  /** Weight of the newest frame in what is usual: ten frames are remembered. */
  private static final double WEIGHT = 0.1;

  private static final int SETTLING_FRAMES = 25;
  private double usual;
  private double variance;
  private int frames;

  /** Learns anew what is usual, as after a nudge, when the pattern no longer lies on itself. */
  void begin() {
    frames = 0;
    variance = 0;
  }

  /**
   * Takes the next frame of a scene that seems to be in its place.
   *
   * @param missing as {@link ShiftEstimator#missing()}
   * @return whether more is missing, at once, than noise and heat can hide; such a frame is not
   *     remembered
   */
  boolean isGone(double missing) {
    if (frames == 0) {
      usual = missing;
    }
    double more = missing - usual;
    if (frames >= SETTLING_FRAMES && more > Math.max(SUDDEN, SIGMAS * Math.sqrt(variance))) {
      return true;
    }
    frames++;
    usual += WEIGHT * more;
    variance += WEIGHT * (more * more - variance);
    return false;
  }
}
