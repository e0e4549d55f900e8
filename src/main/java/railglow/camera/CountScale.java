package railglow.camera;

/**
 * What a camera's values mean: kelvin and degrees Celsius by a line, by a table, or nothing known.
 * Immutable.
 */
public final class CountScale {
  private static final int COUNTS = 1 << 16;
  private final double kelvinPerCount;
  private final double celsiusAtZero;
  private final float[] table;

  private CountScale(double kelvinPerCount, double celsiusAtZero, float[] table) {
    this.kelvinPerCount = kelvinPerCount;
    this.celsiusAtZero = celsiusAtZero;
    this.table = table;
  }

  /** Counts mean nothing known: rises are reported in counts and in units of the noise. */
  public static CountScale unknown() {
    return new CountScale(Double.NaN, Double.NaN, null);
  }

  /**
   * A straight line.
   *
   * @param kelvinPerCount not zero; negative where hot is dark
   * @param celsiusAtZero NaN where only differences mean something
   */
  public static CountScale linear(double kelvinPerCount, double celsiusAtZero) {
    if (!Double.isFinite(kelvinPerCount) || kelvinPerCount == 0) {
      throw new IllegalArgumentException("a scale of " + kelvinPerCount + " kelvin per count");
    }
    return new CountScale(kelvinPerCount, celsiusAtZero, null);
  }

  /**
   * Straight lines between given points; counts outside them have no temperature (NaN), because a
   * calibration says nothing there.
   *
   * @param counts strictly ascending, 0 to 65535, at least two
   * @param celsius one for each, all finite
   */
  public static CountScale table(double[] counts, double[] celsius) {
    if (counts.length < 2 || counts.length != celsius.length) {
      throw new IllegalArgumentException("a table needs two or more pairs");
    }
    float[] all = new float[COUNTS];
    java.util.Arrays.fill(all, Float.NaN);
    for (int i = 0; i + 1 < counts.length; i++) {
      if (!(counts[i] < counts[i + 1]) || counts[i] < 0 || counts[i + 1] >= COUNTS) {
        throw new IllegalArgumentException("counts of a table must ascend within 0 to 65535");
      }
      if (!Double.isFinite(celsius[i]) || !Double.isFinite(celsius[i + 1])) {
        throw new IllegalArgumentException("temperatures of a table must be numbers");
      }
      double slope = (celsius[i + 1] - celsius[i]) / (counts[i + 1] - counts[i]);
      int last = (int) Math.floor(counts[i + 1]);
      for (int c = (int) Math.ceil(counts[i]); c <= last; c++) {
        all[c] = (float) (celsius[i] + slope * (c - counts[i]));
      }
    }
    return new CountScale(1, 0, all);
  }

  /** Whether values are turned into degrees Celsius while decoding. */
  public boolean isTable() {
    return table != null;
  }

  /** Whether hot is dark: samples are then turned over while decoding, so that hot is bright. */
  public boolean hotIsDark() {
    return kelvinPerCount < 0;
  }

  /** The highest temperature of a table; only where there is one. */
  double hottestCelsius() {
    float hottest = Float.NEGATIVE_INFINITY;
    for (float celsius : table) {
      hottest = celsius > hottest ? celsius : hottest;
    }
    return hottest;
  }

  /** Of the samples as written: 1 after a table, negative where hot is dark, NaN when unknown. */
  public double kelvinPerCount() {
    return kelvinPerCount;
  }

  /** Of the samples as written: 0 after a table, NaN when unknown. */
  public double celsiusAtZero() {
    return celsiusAtZero;
  }

  /** Through the table; only where there is one. */
  float celsiusOf(int count) {
    return table[count];
  }
}
