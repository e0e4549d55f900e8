package railglow.thermal;

/**
 * What a body of first order shows in the two channels of a pair of coded cycles, OFF ON ON OFF ON
 * OFF OFF ON, half of the difference of both. The next pair is the opposite, so in the steady state
 * a pair ends at the opposite of where it began; each quarter is solved exactly. Own derivation.
 * Pure.
 */
final class CodedResponse {
  private static final int[] DRIVE = {-1, 1, 1, -1, 1, -1, -1, 1};

  private CodedResponse() {}

  /** Of one lag. A time constant of 0 gives (1, 0). */
  static FirstOrderResponse of(double timeConstant, double period) {
    double u = 4 * timeConstant / period;
    if (!(u > 1e-9)) {
      return new FirstOrderResponse(1, 0);
    }
    double kept = Math.exp(-1 / u);
    double meanKept = -u * Math.expm1(-1 / u);
    double end = 0;
    for (int drive : DRIVE) {
      end = drive / 2.0 + (end - drive / 2.0) * kept;
    }
    // began at x, ends at x kept^8 + end, which is -x
    double state = -end / (1 + Math.pow(kept, DRIVE.length));
    double inPhase = 0;
    double quadrature = 0;
    for (int k = 0; k < DRIVE.length; k++) {
      double drive = DRIVE[k] / 2.0;
      double mean = drive + (state - drive) * meanKept;
      state = drive + (state - drive) * kept;
      int sign = k < 4 ? 1 : -1;
      int quarter = k % 4;
      inPhase += sign * (quarter == 1 || quarter == 2 ? mean : -mean) / 4;
      quadrature += sign * (quarter >= 2 ? mean : -mean) / 4;
    }
    return new FirstOrderResponse(inPhase, quadrature);
  }
}
