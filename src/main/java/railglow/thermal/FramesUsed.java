package railglow.thermal;

import java.util.List;

/** What bodies show in the frames that a run used. Not thread-safe. */
final class FramesUsed {
  private static final int NODES = 48;

  /** Heat is lost from a plate within minutes. */
  private static final double SLOWEST_PERIODS = 200;

  private static final int NODES_TO_SLOWEST = 64;

  private final BodiesInFrames throughCamera;
  private final BodiesInFrames bare;

  FramesUsed(DetectionSettings settings) {
    double period = settings.periodSeconds();
    double[] searched = settings.bodyTimeConstantsSeconds();
    double slowest = Math.max(searched[searched.length - 1] / period, 1);
    throughCamera =
        new BodiesInFrames(settings, NODES, slowest, settings.cameraTimeConstantSeconds());
    bare = new BodiesInFrames(settings, NODES_TO_SLOWEST, SLOWEST_PERIODS, 0);
  }

  /**
   * Takes the times of a cycle's frames, or of a coded pair's.
   *
   * @param cycle from 0
   * @param times empty where its quarters are seen as wholes of steady pulses
   */
  void add(int cycle, List<CycleTimes> times) {
    throughCamera.add(cycle, times);
    bare.add(cycle, times);
  }

  /** Through the camera, in the mean of the cycles that swings are told of. */
  ResponseCurve ofSwings() {
    return throughCamera.withoutFirst();
  }

  /** Of one lag by itself, in the mean of all cycles. */
  ResponseCurve ofOneLag() {
    return bare.ofAll();
  }
}
