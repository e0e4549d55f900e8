package railglow.thermal;

/**
 * The directions of the (I, C) plane that a first-order body seen through the camera can have, from
 * the fastest to the slowest searched for, made even in the angle after whitening with the typical
 * noise. Immutable.
 *
 * @param weightI of the in-phase channel per direction: the best combination is weightI I + weightC
 *     C, of variance 1 per cycle
 * @param weightC of the quadrature per direction
 * @param radians the arc's whitened angle
 */
record DelayArc(double[] weightI, double[] weightC, double radians) {
  private static final double STEP = 0.35;

  static DelayArc of(DetectionSettings settings, PooledNoise noise) {
    // whitening by the lower Cholesky factor: u = I / l11, v = (C - l21 u) / l22
    double l11 = Math.sqrt(noise.varianceI());
    double l21 = noise.covariance() / l11;
    double l22 = Math.sqrt(noise.varianceC() - l21 * l21);
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (double tau : settings.bodyTimeConstantsSeconds()) {
      FirstOrderResponse g = settings.response(tau);
      double u = g.inPhase() / l11;
      double v = (g.quadrature() - l21 * u) / l22;
      double angle = Math.atan2(v, u);
      low = Math.min(low, angle);
      high = Math.max(high, angle);
    }
    double arc = high - low;
    int n = arc < 1e-6 ? 1 : 1 + (int) Math.ceil(arc / STEP);
    double[] weightI = new double[n];
    double[] weightC = new double[n];
    for (int j = 0; j < n; j++) {
      double angle = n == 1 ? low : low + arc * j / (n - 1);
      double a = Math.cos(angle);
      double b = Math.sin(angle);
      // y = a u + b v, written in I and C
      weightC[j] = b / l22;
      weightI[j] = a / l11 - b * l21 / (l22 * l11);
    }
    return new DelayArc(weightI, weightC, arc);
  }

  /** The same directions with the other sign: what would cool while the current flows. */
  DelayArc mirrored() {
    double[] i = weightI.clone();
    double[] c = weightC.clone();
    for (int j = 0; j < i.length; j++) {
      i[j] = -i[j];
      c[j] = -c[j];
    }
    return new DelayArc(i, c, radians);
  }

  int directions() {
    return weightI.length;
  }
}
