package railglow.thermal;

import java.util.List;

/**
 * What the frames used of a run's cycles show of bodies beyond what whole quarters of steady pulses
 * would, summed over the cycles, for a range of time constants and one lag of the camera. Plain
 * cycles begin with the board at rest, and the bodies' quarters go through the same reduction as
 * the pixels'. Not thread-safe.
 */
final class BodiesInFrames {
  private static final double LEAST_OF_PERIOD = 1e-3;

  private final DetectionSettings settings;
  private final double cameraSeconds;
  private final double[] taus;
  private final FirstOrderResponse[] whole;
  private final double[] inPhase;
  private final double[] quadrature;
  private final DriftFreeCycles plain = new DriftFreeCycles();
  private ReducedCycle first;
  private int units;

  /**
   * @param nodes time constants above 0; a smooth difference of some hundredths lies between two
   * @param mostPeriods the longest
   * @param cameraSeconds its lag; 0 for none
   */
  BodiesInFrames(DetectionSettings settings, int nodes, double mostPeriods, double cameraSeconds) {
    this.settings = settings;
    this.cameraSeconds = cameraSeconds;
    taus = new double[nodes + 1];
    whole = new FirstOrderResponse[taus.length];
    inPhase = new double[taus.length];
    quadrature = new double[taus.length];
    double least = LEAST_OF_PERIOD * settings.periodSeconds();
    double ratio = mostPeriods / LEAST_OF_PERIOD;
    for (int k = 0; k < taus.length; k++) {
      taus[k] = k == 0 ? 0 : least * Math.pow(ratio, (k - 1.0) / (nodes - 1));
      whole[k] = settings.response(taus[k], cameraSeconds);
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
      plain.next(BodiesFromRest.of(taus, cameraSeconds, cycle, times.get(0))).ifPresent(this::take);
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
      FirstOrderResponse seen = SampledResponse.of(taus[k], cameraSeconds, times);
      inPhase[k] += seen.inPhase() - whole[k].inPhase();
      quadrature[k] += seen.quadrature() - whole[k].quadrature();
    }
  }

  /** In the mean of all cycles so far. */
  ResponseCurve ofAll() {
    return curve(null);
  }

  /** In the mean of all but the first, as swings are told of; of all while that is not known. */
  ResponseCurve withoutFirst() {
    return curve(plain.startBend().orElse(null));
  }

  /**
   * @param startBend with which the first cycle is left out; null to keep it
   */
  private ResponseCurve curve(ReducedCycle startBend) {
    double[] i = inPhase.clone();
    double[] c = quadrature.clone();
    plain.provisional().ifPresent(last -> add(last, 1, i, c));
    if (startBend != null) {
      add(first, -1, i, c);
    }
    int of = Math.max(1, startBend == null ? units : units - 1);
    FirstOrderResponse[] more = new FirstOrderResponse[taus.length];
    for (int k = 0; k < more.length; k++) {
      double bendI = startBend == null ? 0 : startBend.inPhase()[k];
      double bendC = startBend == null ? 0 : startBend.quadrature()[k];
      more[k] = new FirstOrderResponse((i[k] + bendI) / of, (c[k] + bendC) / of);
    }
    return new ResponseCurve(settings, cameraSeconds, taus, more);
  }
}
