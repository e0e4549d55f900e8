package railglow.units;

import java.util.Locale;

/** Probabilities in words, each way for its place. Pure. */
public final class Probability {
  private static final double ONE_IN_A_MILLION = 1e-6;

  /** From 0 to 9; a minus is U+207B. */
  public static final String SUPERSCRIPTS =
      "\u2070\u00b9\u00b2\u00b3\u2074\u2075\u2076\u2077\u2078\u2079";

  private Probability() {}

  /** For a line with little room: 0.031, 2e-04, "below 1e-6". */
  public static String brief(double p) {
    if (p < ONE_IN_A_MILLION) {
      return "below 1e-6";
    }
    return String.format(Locale.ROOT, p < 0.001 ? "%.0e" : "%.3f", p);
  }

  /** For a sentence: 0.0312, 2.0e-04, "below one in a million". */
  public static String inWords(double p) {
    return p < ONE_IN_A_MILLION
        ? "below one in a million"
        : String.format(Locale.ROOT, p < 0.001 ? "%.1e" : "%.4f", p);
  }

  /** In print, with two digits: 0.031 or 3.0 x 10^-12 with real superscripts. */
  public static String printed(double p) {
    if (Double.isNaN(p)) {
      return "unknown";
    }
    if (p == 0) {
      return "below 10" + superscript(-300);
    }
    if (p >= 0.00095) {
      return String.format(Locale.ROOT, p >= 0.0995 ? "%.2f" : "%.3f", p);
    }
    int exponent = (int) Math.floor(Math.log10(p));
    String digits = String.format(Locale.ROOT, "%.1f", p / Math.pow(10, exponent));
    if (digits.equals("10.0")) {
      digits = "1.0";
      exponent++;
    }
    return digits + " \u00d7 10" + superscript(exponent);
  }

  private static String superscript(int exponent) {
    StringBuilder text = new StringBuilder(exponent < 0 ? "\u207b" : "");
    for (char digit : Integer.toString(Math.abs(exponent)).toCharArray()) {
      text.append(SUPERSCRIPTS.charAt(digit - '0'));
    }
    return text.toString();
  }
}
