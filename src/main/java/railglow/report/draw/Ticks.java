package railglow.report.draw;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Round numbers along an axis: steps of 1, 2 or 5 times a power of ten. Stateless. */
public final class Ticks {
  private Ticks() {}

  /** The step that gives at most so many ticks. */
  public static double step(double low, double high, int most) {
    double rough = (high - low) / Math.max(1, most);
    if (!(rough > 0) || Double.isInfinite(rough)) {
      return 1;
    }
    double power = Math.pow(10, Math.floor(Math.log10(rough)));
    for (double factor : new double[] {1, 2, 5}) {
      if (factor * power >= rough * (1 - 1e-9)) {
        return factor * power;
      }
    }
    return 10 * power;
  }

  /** The ticks inside a range; zero is one of them where it is inside. */
  public static List<Double> between(double low, double high, int most) {
    double step = step(low, high, most);
    List<Double> ticks = new ArrayList<>();
    long last = (long) Math.floor(high / step + 1e-9);
    for (long k = (long) Math.ceil(low / step - 1e-9); k <= last && ticks.size() < 100; k++) {
      ticks.add(k * step);
    }
    return ticks;
  }

  /** The smallest of 1, 2, 5 times a power of ten that is not below a positive value. */
  public static double roundUp(double value) {
    return step(0, value, 1);
  }

  /** The smallest of 1, 1.2, 1.5, 2, 2.5, 3, 4, 5, 6, 8 times a power of ten not below a value. */
  public static double justAbove(double value) {
    double power = Math.pow(10, Math.floor(Math.log10(value)));
    for (double factor : new double[] {1, 1.2, 1.5, 2, 2.5, 3, 4, 5, 6, 8}) {
      if (factor * power >= value * (1 - 1e-9)) {
        return factor * power;
      }
    }
    return 10 * power;
  }

  /** A tick with just the decimals that its step needs. */
  public static String text(double tick, double step) {
    int decimals = (int) Math.max(0, Math.min(9, -Math.floor(Math.log10(step) + 1e-9)));
    String text = String.format(Locale.ROOT, "%." + decimals + "f", tick);
    return text.replaceFirst("^-(0(\\.0*)?)$", "$1");
  }
}
