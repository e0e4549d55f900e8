package railglow.thermal;

import java.util.List;
import java.util.function.DoubleFunction;

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
  private final DoubleFunction<FirstOrderResponse> inWholeQuarters;
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
   * @param inWholeQuarters what a body shows through the camera in whole quarters
   */
  BodiesInFrames(
      DetectionSettings settings,
      int nodes,
      double mostPeriods,
      double cameraSeconds,
      DoubleFunction<FirstOrderResponse> inWholeQuarters) {
    this.settings = settings;
    this.cameraSeconds = cameraSeconds;
    this.inWholeQuarters = inWholeQuarters;
    taus = new double[nodes + 1];
    whole = new FirstOrderResponse[taus.length];
    inPhase = new double[taus.length];
    quadrature = new double[taus.length];
    double least = LEAST_OF_PERIOD * settings.periodSeconds();
    double ratio = mostPeriods / LEAST_OF_PERIOD;
    for (int k = 0; k < taus.length; k++) {
      taus[k] = k == 0 ? 0 : least * Math.pow(ratio, (k - 1.0) / (nodes - 1));
      whole[k] = inWholeQuarters.apply(taus[k]);
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
    double[] i = inPhase.clone();
    double[] c = quadrature.clone();
    plain.provisional().ifPresent(last -> add(last, 1, i, c));
    return curve(i, c, units);
  }

  /** In the mean of all but the first, as swings are told of. */
  ResponseCurve withoutFirst() {
    ReducedCycle bend = plain.startBend().orElse(null);
    if (bend == null) {
      return ofAll();
    }
    double[] i = inPhase.clone();
    double[] c = quadrature.clone();
    plain.provisional().ifPresent(last -> add(last, 1, i, c));
    add(first, -1, i, c);
    for (int k = 0; k < taus.length; k++) {
      i[k] += bend.inPhase()[k];
      c[k] += bend.quadrature()[k];
    }
    return curve(i, c, units - 1);
  }

  private ResponseCurve curve(double[] i, double[] c, int of) {
    FirstOrderResponse[] more = new FirstOrderResponse[taus.length];
    for (int k = 0; k < more.length; k++) {
      more[k] = new FirstOrderResponse(i[k] / Math.max(1, of), c[k] / Math.max(1, of));
    }
    return new ResponseCurve(settings, inWholeQuarters, taus, more);
  }
}
