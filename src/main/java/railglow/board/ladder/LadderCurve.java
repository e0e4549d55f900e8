package railglow.board.ladder;

import java.util.List;

/** The shape of current against voltage over three steps or more, by rising voltage. Pure. */
final class LadderCurve {
  private static final double GROWS_ON = 1.1;
  private final double[] volts;
  private final double[] amperes;
  private final double[] sigma;
  private final StraightLine line;

  LadderCurve(List<LadderStep> steps) {
    int n = steps.size();
    volts = new double[n];
    amperes = new double[n];
    sigma = new double[n];
    for (int i = 0; i < n; i++) {
      volts[i] = steps.get(i).volts();
      amperes[i] = steps.get(i).amperes();
    }
    // The error of the voltage counts as current through the mean conductance.
    double conductance = amperes[n - 1] / Math.max(1e-9, volts[n - 1]);
    for (int i = 0; i < n; i++) {
      sigma[i] = Math.hypot(steps.get(i).amperesSigma(), conductance * steps.get(i).voltsSigma());
    }
    line = StraightLine.of(volts, amperes, sigma);
  }

  StraightLine line() {
    return line;
  }

  /** Error of the slope, widened when the points scatter more than their errors. */
  double slopeSigma() {
    double scatter =
        line.degreesOfFreedom() > 0 ? Math.sqrt(line.chiSquared() / line.degreesOfFreedom()) : 1;
    return line.slopeSigma() * Math.max(1, scatter);
  }

  /** The line through the points from first up to last, both included. */
  private StraightLine part(int first, int last) {
    return StraightLine.of(
        java.util.Arrays.copyOfRange(volts, first, last + 1),
        java.util.Arrays.copyOfRange(amperes, first, last + 1),
        java.util.Arrays.copyOfRange(sigma, first, last + 1));
  }

  private double conductanceBetween(int i) {
    return (amperes[i] - amperes[i - 1]) / (volts[i] - volts[i - 1]);
  }

  private double conductanceSigma(int i) {
    return Math.hypot(sigma[i], sigma[i - 1]) / (volts[i] - volts[i - 1]);
  }

  /**
   * The first step whose conductance jumps against a path that conducted evenly before it; -1 when
   * none does.
   */
  int jump(double factor, double sigmas) {
    for (int i = 3; i < volts.length; i++) {
      StraightLine before = part(0, i - 1);
      // A junction's current grows from nothing; a path that breaks down conducted well before.
      boolean even =
          before.slope() > sigmas * before.slopeSigma()
              && amperes[i - 2] > 2 * sigmas * sigma[i - 2]
              && amperes[i - 3] > sigmas * sigma[i - 3];
      double expected = before.at(volts[i]);
      double error = Math.hypot(before.sigmaAt(volts[i]), sigma[i]);
      boolean straight =
          before.chiSquared() < 4 + 3 * before.degreesOfFreedom() || curvature(0, i - 1) < 0.15;
      if (even
          && straight
          && conductanceBetween(i) > factor * before.slope()
          && amperes[i] - expected > sigmas * error
          && !growsOn(i)) {
        return i;
      }
    }
    return -1;
  }

  /**
   * Whether conductance goes on growing after a step, as a junction's does; what breaks down has
   * done most of its jump at once.
   */
  private boolean growsOn(int i) {
    return i + 1 < volts.length && conductanceBetween(i + 1) > GROWS_ON * conductanceBetween(i);
  }

  /** Relative change of conductance from the lower to the upper half of a range of points. */
  private double curvature(int first, int last) {
    int middle = (first + last) / 2;
    if (middle == first || middle == last) {
      return 0;
    }
    double low = part(first, middle).slope();
    double high = part(middle, last).slope();
    return Math.abs(high - low) / Math.max(1e-12, Math.max(Math.abs(high), Math.abs(low)));
  }

  /** Whether the current stops growing at the upper end. */
  boolean saturates(double share, double sigmas) {
    int n = volts.length;
    if (n < 5) {
      return false;
    }
    StraightLine low = part(0, n / 2);
    StraightLine high = part(n - 3, n - 1);
    return low.slope() > sigmas * low.slopeSigma()
        && high.slope() < share * low.slope()
        && low.slope() - high.slope() > sigmas * Math.hypot(low.slopeSigma(), high.slopeSigma());
  }

  /** Whether conductance grows with voltage by more than a share, and beyond the errors. */
  boolean bends(double share, double sigmas) {
    int n = volts.length;
    int middle = n / 2;
    StraightLine low = part(0, middle);
    StraightLine high = part(Math.min(middle, n - 2), n - 1);
    double change = high.slope() - low.slope();
    return change > share * Math.abs(high.slope())
        && change > sigmas * Math.hypot(low.slopeSigma(), high.slopeSigma());
  }

  /** Where the tangent at the upper end meets zero current; not below zero. */
  double turnOnVolts() {
    int n = volts.length;
    double slope = conductanceBetween(n - 1);
    boolean sure = slope > 2 * conductanceSigma(n - 1);
    StraightLine end = sure ? null : part(n - 3, n - 1);
    double used = sure ? slope : end.slope();
    return Math.max(0, volts[n - 1] - amperes[n - 1] / Math.max(1e-12, used));
  }
}
