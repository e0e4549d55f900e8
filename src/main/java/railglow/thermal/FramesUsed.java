package railglow.thermal;

import java.util.List;

/**
 * By how much the frames used of a run's cycles show bodies otherwise than whole quarters of steady
 * pulses would, in the mean over the cycles and over a range of time constants. Plain cycles begin
 * with the board at rest, and the bodies' quarters go through the same reduction as the pixels'.
 * Not thread-safe.
 */
final class FramesUsed {
  /** Time constants above 0; a smooth difference of some hundredths lies between two of them. */
  private static final int NODES = 48;

  private static final double LEAST_OF_PERIOD = 1e-3;

  private final DetectionSettings settings;
  private final double[] taus = new double[NODES + 1];
  private final FirstOrderResponse[] whole = new FirstOrderResponse[NODES + 1];
  private final double[] inPhase = new double[NODES + 1];
  private final double[] quadrature = new double[NODES + 1];
  private final DriftFreeCycles plain = new DriftFreeCycles();
  private ReducedCycle first;
  private int units;

  FramesUsed(DetectionSettings settings) {
    this.settings = settings;
    double[] searched = settings.bodyTimeConstantsSeconds();
    double least = LEAST_OF_PERIOD * settings.periodSeconds();
    double most = Math.max(searched[searched.length - 1], settings.periodSeconds());
    for (int k = 0; k <= NODES; k++) {
      taus[k] = k == 0 ? 0 : least * Math.pow(most / least, (k - 1.0) / (NODES - 1));
      whole[k] = settings.response(taus[k]);
    }
  }

  /**
   * Takes the times of a cycle's frames, or of a coded pair's.
   *
   * @param cycle from 0
   * @param times empty where its quarters are seen as wholes of steady pulses
   */
  void add(int cycle, List<CycleTimes> times) {
    units++;
    if (times.size() == 1) {
      plain
          .next(BodiesFromRest.of(taus, settings.cameraTimeConstantSeconds(), cycle, times.get(0)))
          .ifPresent(this::take);
    } else if (!times.isEmpty()) {
      addPair(times);
    }
  }

  private void take(ReducedCycle cycle) {
    first = first == null ? cycle : first;
    add(cycle, 1, inPhase, quadrature);
  }

  private void add(ReducedCycle cycle, int sign, double[] toInPhase, double[] toQuadrature) {
    for (int k = 0; k < taus.length; k++) {
      toInPhase[k] += sign * (cycle.inPhase()[k] - whole[k].inPhase());
      toQuadrature[k] += sign * (cycle.quadrature()[k] - whole[k].quadrature());
    }
  }

  private void addPair(List<CycleTimes> times) {
    for (int k = 0; k < taus.length; k++) {
      FirstOrderResponse seen =
          SampledResponse.of(taus[k], settings.cameraTimeConstantSeconds(), times);
      inPhase[k] += seen.inPhase() - whole[k].inPhase();
      quadrature[k] += seen.quadrature() - whole[k].quadrature();
    }
  }

  /** What is known from the cycles so far, of which swings are told. */
  ResponseCurve curve() {
    double[] i = inPhase.clone();
    double[] c = quadrature.clone();
    plain.provisional().ifPresent(last -> add(last, 1, i, c));
    ReducedCycle bend = plain.startBend().orElse(null);
    if (bend != null) {
      add(first, -1, i, c);
      for (int k = 0; k < taus.length; k++) {
        i[k] += bend.inPhase()[k];
        c[k] += bend.quadrature()[k];
      }
    }
    int of = Math.max(1, bend == null ? units : units - 1);
    FirstOrderResponse[] more = new FirstOrderResponse[taus.length];
    for (int k = 0; k < more.length; k++) {
      more[k] = new FirstOrderResponse(i[k] / of, c[k] / of);
    }
    return new ResponseCurve(settings, taus, more);
  }
}
