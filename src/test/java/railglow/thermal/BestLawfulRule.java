package railglow.thermal;

import java.util.Arrays;

/**
 * The test of a known drift that needs the fewest cycles on average among all that look after whole
 * cycles only, from the first lawful look to the cap, with given errors: by backward induction over
 * the logarithm of the likelihood ratio, the errors priced so that they come out as asked (Arrow,
 * Blackwell, Girshick, Econometrica 17, 1949, p. 213). Wald's bound lets a test look at any moment.
 */
final class BestLawfulRule {
  private static final double LOWEST = -15;
  private static final double HIGHEST = 30;
  private static final int STEPS_PER_DRIFT = 12;
  private static final double REACH = 5.5;
  private static final int HALVINGS = 30;
  private static final double NO_REFUSAL = 1e12;

  private final int first;
  private final int cap;
  private final double drift;
  private final double step;
  private final int points;
  private final double[] kernel;

  private BestLawfulRule(int first, int cap, double drift) {
    this.first = first;
    this.cap = cap;
    this.drift = drift;
    step = drift / STEPS_PER_DRIFT;
    points = (int) Math.ceil((HIGHEST - LOWEST) / step);
    kernel = kernel(1);
  }

  /** What a rule reaches when the drift is there. */
  private record Reached(double cycles, double error, double found) {}

  /**
   * The least mean number of cycles when the source is there.
   *
   * @param error probability of a call without a source
   * @param found probability of a call with one, by the cap; where it is all but sure nothing is
   *     ever given up before the cap
   * @param drift score per root of a cycle
   */
  static double meanCycles(int first, int cap, double error, double found, double drift) {
    BestLawfulRule rule = new BestLawfulRule(first, cap, drift);
    if (found > 1 - 1e-9) {
      return rule.withError(error, NO_REFUSAL).cycles;
    }
    double low = Math.log(1e-3);
    double high = Math.log(NO_REFUSAL);
    for (int i = 0; i < HALVINGS / 2; i++) {
      double middle = (low + high) / 2;
      boolean enough = rule.withError(error, Math.exp(middle)).found >= found;
      low = enough ? low : middle;
      high = enough ? middle : high;
    }
    return rule.withError(error, Math.exp(high)).cycles;
  }

  private Reached withError(double error, double priceOfMiss) {
    double low = Math.log(1e-3);
    double high = Math.log(1e15);
    for (int i = 0; i < HALVINGS; i++) {
      double middle = (low + high) / 2;
      boolean tooMany = best(Math.exp(middle), priceOfMiss).error > error;
      low = tooMany ? middle : low;
      high = tooMany ? high : middle;
    }
    return best(Math.exp(high), priceOfMiss);
  }

  /** All expectations are with the drift there; a false call then weighs one over the ratio. */
  private Reached best(double priceOfError, double priceOfMiss) {
    double[] cycles = new double[points];
    double[] errors = new double[points];
    double[] found = new double[points];
    for (int k = cap; k >= first; k--) {
      double[] laterCycles = k == cap ? null : ahead(cycles, kernel);
      double[] laterErrors = k == cap ? null : ahead(errors, kernel);
      double[] laterFound = k == cap ? null : ahead(found, kernel);
      for (int i = 0; i < points; i++) {
        double falseCall = Math.exp(-at(i));
        double call = priceOfError * falseCall;
        double on =
            k == cap
                ? Double.POSITIVE_INFINITY
                : laterCycles[i]
                    + 1
                    + priceOfError * laterErrors[i]
                    + priceOfMiss * (1 - laterFound[i]);
        boolean calls = call <= Math.min(on, priceOfMiss);
        boolean goesOn = !calls && on < priceOfMiss;
        cycles[i] = goesOn ? laterCycles[i] + 1 : 0;
        errors[i] = calls ? falseCall : goesOn ? laterErrors[i] : 0;
        found[i] = calls ? 1 : goesOn ? laterFound[i] : 0;
      }
    }
    double[] start = kernel(first);
    int zero = (int) Math.round(-LOWEST / step);
    return new Reached(
        first + sum(cycles, start, zero), sum(errors, start, zero), sum(found, start, zero));
  }

  private double at(int point) {
    return LOWEST + point * step;
  }

  /** Weights of a step over so many cycles: normal of mean d^2 n / 2 and variance d^2 n. */
  private double[] kernel(int count) {
    double deviation = drift * Math.sqrt(count);
    double mean = drift * drift * count / 2;
    int most = (int) Math.ceil((mean + REACH * deviation) / step);
    double[] weights = new double[2 * most + 1];
    for (int k = -most; k <= most; k++) {
      double u = (k * step - mean) / deviation;
      weights[k + most] = Math.exp(-u * u / 2);
    }
    double sum = Arrays.stream(weights).sum();
    return Arrays.stream(weights).map(w -> w / sum).toArray();
  }

  private double[] ahead(double[] values, double[] weights) {
    double[] result = new double[points];
    Arrays.setAll(result, i -> sum(values, weights, i));
    return result;
  }

  /** What lies beyond the grid is as at its end. */
  private double sum(double[] values, double[] weights, int from) {
    int most = weights.length / 2;
    double sum = 0;
    for (int k = -most; k <= most; k++) {
      sum += weights[k + most] * values[Math.max(0, Math.min(points - 1, from + k))];
    }
    return sum;
  }
}
