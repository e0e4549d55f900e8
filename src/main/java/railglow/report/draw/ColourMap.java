package railglow.report.draw;

import java.util.function.DoubleToIntFunction;

/**
 * Numbers as colours, computed in CIELAB. In both maps lightness rises in equal steps from the
 * lowest to the highest value, so a grey print and any kind of colour blindness keep the order and
 * the sign; hue only adds to it, along blue to yellow, which most colour-blind people see.
 * Immutable.
 */
public final class ColourMap {
  private static final int STEPS = 255;
  private static final int NO_VALUE = 0xB08CA8;

  /**
   * For differences: a neutral mid grey at zero, darker and blue below, lighter and amber above.
   */
  public static final ColourMap DIFFERENCE = new ColourMap(ColourMap::difference, NO_VALUE);

  /** For temperatures: from a dark to a pale slate of one family of hues. */
  public static final ColourMap TEMPERATURE = new ColourMap(ColourMap::temperature, NO_VALUE);

  /** For delays: early is dark amber, late is pale; no value is white. */
  public static final ColourMap DELAY = new ColourMap(ColourMap::delay, 0xFFFFFF);

  private final int noValue;
  private final int[] colours = new int[STEPS];

  private ColourMap(DoubleToIntFunction colourAt, int noValue) {
    this.noValue = noValue;
    for (int i = 0; i < STEPS; i++) {
      colours[i] = colourAt.applyAsInt(i / (STEPS - 1.0));
    }
  }

  /**
   * The colour of a value.
   *
   * @param fraction 0 for the low end of the scale, 1 for the high end; values beyond get the end's
   *     colour, NaN a colour that is not in the map
   * @return 0xRRGGBB
   */
  public int rgb(double fraction) {
    if (Double.isNaN(fraction)) {
      return noValue;
    }
    return colours[(int) Math.round(Math.max(0, Math.min(1, fraction)) * (STEPS - 1))];
  }

  private static int difference(double fraction) {
    double t = 2 * fraction - 1;
    double chroma = (t < 0 ? 44 : 58) * Math.sin(0.92 * Math.PI * Math.abs(t));
    return Lab.rgb(54 + 39 * t, chroma, t < 0 ? 280 : 78);
  }

  private static int temperature(double fraction) {
    double chroma = 29 * Math.sin(Math.PI * (0.12 + 0.8 * fraction));
    return Lab.rgb(10 + 85 * fraction, chroma, 268 - 62 * fraction);
  }

  private static int delay(double fraction) {
    double chroma = 46 * Math.sin(Math.PI * (0.2 + 0.72 * fraction));
    return Lab.rgb(22 + 68 * fraction, chroma, 42 + 48 * fraction);
  }
}
