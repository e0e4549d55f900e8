package railglow.thermal;

import java.util.Locale;

/**
 * Prints the mean number of cycles to the decision beside the least that any test of the same
 * errors can need: Wald's bound on the expected sample number, (1-b) log((1-b)/a) + b log(b/(1-a))
 * over half the squared drift (Wald, Sequential Analysis, 1947, appendix A.7), of a source that an
 * equally wide search calls with 95 % at the cap, and of stronger ones. Both are at least the first
 * lawful look. By exact integration; argument: cap in cycles (30).
 */
public final class DecisionTimeStudy {
  private static final int FIRST = 4;
  private static final double[] ERRORS = {1e-5, 1e-6, 1e-7};
  private static final double[] STRENGTHS = {1, 1.5, 2, 3, 5, 10};

  private DecisionTimeStudy() {}

  public static void main(String[] args) {
    int cap = args.length > 0 ? Integer.parseInt(args[0]) : 30;
    System.out.println(
        "| error per test | times the rise of 95 % | found by the cap | mean cycles | least mean | ratio |");
    System.out.println("|---|---|---|---|---|---|");
    for (double error : ERRORS) {
      LookBounds bounds = LookBounds.of(FIRST, cap, error);
      double design = design(bounds, cap);
      for (double strength : STRENGTHS) {
        line(bounds, error, cap, strength, strength * design);
      }
    }
  }

  private static void line(
      LookBounds bounds, double error, int cap, double strength, double drift) {
    double[] crossing = bounds.crossingProbabilities(drift);
    double found = 0;
    double cycles = 0;
    for (int j = 0; j < crossing.length; j++) {
      found += crossing[j];
      cycles += crossing[j] * (FIRST + j);
    }
    found = Math.min(1 - 1e-12, found);
    cycles += (1 - found) * cap;
    double missed = 1 - found;
    double least =
        (found * Math.log(found / error) + missed * Math.log(missed / (1 - error)))
            / (drift * drift / 2);
    double lawful = Math.max(FIRST, least);
    System.out.printf(
        Locale.ROOT,
        "| %.0e | %.1f | %.3f | %.1f | %.1f | %.2f |%n",
        error,
        strength,
        found,
        cycles,
        lawful,
        cycles / lawful);
  }

  /** Score per root of a cycle that is found by the cap with 95 %. */
  private static double design(LookBounds bounds, int cap) {
    double low = 0;
    double high = 20 / Math.sqrt(cap);
    for (int i = 0; i < 40; i++) {
      double middle = (low + high) / 2;
      double sum = 0;
      for (double p : bounds.crossingProbabilities(middle)) {
        sum += p;
      }
      if (sum < 0.95) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return high;
  }
}
