package railglow.thermal;

import java.util.Arrays;
import java.util.function.DoubleFunction;
import railglow.units.Interval;

/**
 * From amplitudes in the frames used to those in whole quarters, which do not depend on how frames
 * stood to edges. How far they differ depends on how a place warms, and its own two amplitudes say
 * that nearly: one body, heat that spreads in a sheet ({@link SheetResponse}), and what passes
 * through one body into another ({@link CoveredResponse}) of the same delay differ by some
 * hundredths, most where extremes at the edges are not seen. The middle of what they make of it is
 * taken, in the mean over the delays that noise leaves open. Immutable.
 *
 * @param inPhase real part of the factor that the amplitudes, I + iC, are multiplied by
 * @param quadrature imaginary part
 * @param openShare how far the farthest of the three is from the size told, as a share of it
 * @param relativeVariance of the size told for not knowing the delay
 */
record WholePulse(double inPhase, double quadrature, double openShare, double relativeVariance) {
  private static final WholePulse NOTHING_TO_DO = new WholePulse(1, 0, 0, 0);

  /** Gauss's nodes and weights for a normal error: exact up to the fifth power. */
  private static final double[] NODES = {-Math.sqrt(3), 0, Math.sqrt(3)};

  private static final double[] WEIGHTS = {1.0 / 6, 2.0 / 3, 1.0 / 6};

  /** What the frames used made of a place that shows these amplitudes. */
  static WholePulse of(Amplitudes seen, ResponseCurve curve) {
    if (curve.isOfWholeQuarters()) {
      return NOTHING_TO_DO;
    }
    double[] taus = curve.taus();
    double slowest = taus[taus.length - 1];
    double[] above = Arrays.copyOfRange(taus, 1, taus.length);
    Family bodies = Family.of(taus, curve::seen, curve::whole);
    Family sheets =
        Family.of(
            above,
            tau -> SheetResponse.of(tau, slowest, curve::seen),
            tau -> SheetResponse.of(tau, slowest, curve::whole));
    Family covered =
        Family.of(
            taus,
            tau -> CoveredResponse.of(tau, curve::seen),
            tau -> CoveredResponse.of(tau, curve::whole));
    double angle = Math.atan2(seen.quadrature(), seen.inPhase());
    double inPhase = 0;
    double quadrature = 0;
    double open = 0;
    double size = 0;
    double square = 0;
    for (int k = 0; k < NODES.length; k++) {
      WholePulse one = between(bodies, sheets, covered, angle + NODES[k] * seen.angleSigma());
      inPhase += WEIGHTS[k] * one.inPhase;
      quadrature += WEIGHTS[k] * one.quadrature;
      open += WEIGHTS[k] * one.openShare;
      size += WEIGHTS[k] * one.size();
      square += WEIGHTS[k] * one.size() * one.size();
    }
    double variance = Math.max(0, square / (size * size) - 1);
    return new WholePulse(inPhase, quadrature, open, variance);
  }

  private static WholePulse between(Family bodies, Family sheets, Family covered, double angle) {
    WholePulse body = bodies.at(angle);
    // what is hardly later than what follows at once is no sheet
    double room = Math.max(sheets.firstAngle() - bodies.firstAngle(), 1e-3);
    double part = Math.max(0, Math.min(1, turned(angle - bodies.firstAngle()) / room));
    WholePulse sheet = body.towards(sheets.at(angle), part);
    WholePulse inARow = covered.at(angle);
    WholePulse told = body.towards(sheet, 0.5).towards(inARow, 0.5);
    double open = 0;
    for (WholePulse other : new WholePulse[] {body, sheet, inARow}) {
      open = Math.max(open, Math.abs(other.size() / told.size() - 1));
    }
    return new WholePulse(told.inPhase, told.quadrature, open, 0);
  }

  /** Places of one kind, from fast to slow: the angle each shows and the factor it needs. */
  private record Family(double[] angles, WholePulse[] factors) {
    static Family of(
        double[] taus,
        DoubleFunction<FirstOrderResponse> seen,
        DoubleFunction<FirstOrderResponse> whole) {
      double[] angles = new double[taus.length];
      WholePulse[] factors = new WholePulse[taus.length];
      for (int k = 0; k < taus.length; k++) {
        FirstOrderResponse shown = seen.apply(taus[k]);
        angles[k] = shown.angle();
        factors[k] = from(shown, whole.apply(taus[k]));
      }
      return new Family(angles, factors);
    }

    double firstAngle() {
      return angles[0];
    }

    /** Of the one that shows this angle, or the nearest to it. */
    WholePulse at(double angle) {
      int after = 0;
      while (after < angles.length && turned(angles[after] - angle) < 0) {
        after++;
      }
      if (after == 0 || after == angles.length) {
        return factors[Math.min(after, angles.length - 1)];
      }
      double gone = turned(angle - angles[after - 1]);
      return factors[after - 1].towards(
          factors[after], gone / (gone + turned(angles[after] - angle)));
    }
  }

  /** The quotient of the two as complex numbers: how much longer one is, and how far turned. */
  private static WholePulse from(FirstOrderResponse seen, FirstOrderResponse whole) {
    double square = seen.size() * seen.size();
    return new WholePulse(
        (whole.inPhase() * seen.inPhase() + whole.quadrature() * seen.quadrature()) / square,
        (whole.quadrature() * seen.inPhase() - whole.inPhase() * seen.quadrature()) / square,
        0,
        0);
  }

  private WholePulse towards(WholePulse other, double part) {
    return new WholePulse(
        inPhase + (other.inPhase - inPhase) * part,
        quadrature + (other.quadrature - quadrature) * part,
        0,
        0);
  }

  /** Into -pi to pi. */
  private static double turned(double radians) {
    return Math.IEEEremainder(radians, 2 * Math.PI);
  }

  private double size() {
    return Math.hypot(inPhase, quadrature);
  }

  /** Amplitudes as whole quarters would show them. */
  Amplitudes of(Amplitudes seen) {
    double i = inPhase;
    double c = quadrature;
    double varianceI = seen.varianceI();
    double varianceC = seen.varianceC();
    double covariance = seen.covariance();
    return new Amplitudes(
        i * seen.inPhase() - c * seen.quadrature(),
        c * seen.inPhase() + i * seen.quadrature(),
        i * i * varianceI + c * c * varianceC - 2 * i * c * covariance,
        c * c * varianceI + i * i * varianceC + 2 * i * c * covariance,
        i * c * (varianceI - varianceC) + (i * i - c * c) * covariance);
  }

  /** What is open round a size, with room for how else the place may warm. */
  Interval with(Interval open, double size) {
    return new Interval(open.low() - openShare * size, open.high() + openShare * size);
  }
}
