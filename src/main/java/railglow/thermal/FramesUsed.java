package railglow.thermal;

import java.util.List;

/**
 * By how much the frames used of a run's cycles show bodies otherwise than whole quarters would, in
 * the mean over the cycles and over a range of time constants. Not thread-safe.
 */
final class FramesUsed {
  /** Time constants above 0; a smooth difference of some hundredths lies between two of them. */
  private static final int NODES = 48;

  private static final double LEAST_OF_PERIOD = 1e-3;

  private final DetectionSettings settings;
  private final double[] taus = new double[NODES + 1];
  private final double[] inPhase = new double[NODES + 1];
  private final double[] quadrature = new double[NODES + 1];
  private int units;

  FramesUsed(DetectionSettings settings) {
    this.settings = settings;
    double[] searched = settings.bodyTimeConstantsSeconds();
    double least = LEAST_OF_PERIOD * settings.periodSeconds();
    double most = Math.max(searched[searched.length - 1], settings.periodSeconds());
    for (int k = 1; k <= NODES; k++) {
      taus[k] = least * Math.pow(most / least, (k - 1.0) / (NODES - 1));
    }
  }

  /**
   * Takes the times of a cycle's frames, or of a coded pair's.
   *
   * @param times empty where its quarters are seen as wholes
   */
  void add(List<CycleTimes> times) {
    units++;
    if (times.isEmpty()) {
      return;
    }
    for (int k = 0; k < taus.length; k++) {
      FirstOrderResponse seen =
          SampledResponse.of(taus[k], settings.cameraTimeConstantSeconds(), times);
      FirstOrderResponse whole = settings.response(taus[k]);
      inPhase[k] += seen.inPhase() - whole.inPhase();
      quadrature[k] += seen.quadrature() - whole.quadrature();
    }
  }

  /** What is known from the cycles so far. */
  ResponseCurve curve() {
    FirstOrderResponse[] more = new FirstOrderResponse[taus.length];
    for (int k = 0; k < more.length; k++) {
      int of = Math.max(1, units);
      more[k] = new FirstOrderResponse(inPhase[k] / of, quadrature[k] / of);
    }
    return new ResponseCurve(settings, taus, more);
  }
}
