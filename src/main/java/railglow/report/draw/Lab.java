package railglow.report.draw;

/**
 * Colours in CIELAB under D65 (ISO/CIE 11664-4) and their way to sRGB (IEC 61966-2-1). Equal steps
 * of lightness look about equally large there, in colour and printed grey. Stateless.
 */
final class Lab {
  private static final double DELTA = 6.0 / 29;

  private Lab() {}

  /** Linear sRGB, each 0 to 1 inside the gamut and beyond outside of it. */
  private static double[] linear(double lightness, double a, double b) {
    double fy = (lightness + 16) / 116;
    double x = 0.95047 * inverse(fy + a / 500);
    double y = inverse(fy);
    double z = 1.08883 * inverse(fy - b / 200);
    return new double[] {
      3.2406 * x - 1.5372 * y - 0.4986 * z,
      -0.9689 * x + 1.8758 * y + 0.0415 * z,
      0.0557 * x - 0.2040 * y + 1.0570 * z
    };
  }

  private static double inverse(double t) {
    return t > DELTA ? t * t * t : 3 * DELTA * DELTA * (t - 4.0 / 29);
  }

  private static boolean inGamut(double lightness, double chroma, double hueRadians) {
    for (double part :
        linear(lightness, chroma * Math.cos(hueRadians), chroma * Math.sin(hueRadians))) {
      if (part < -1e-4 || part > 1 + 1e-4) {
        return false;
      }
    }
    return true;
  }

  /**
   * The sRGB colour with this lightness and hue and with the wanted chroma, or the most chroma that
   * sRGB has there.
   *
   * @param lightness L*, 0 to 100
   * @param chroma C*, 0 for grey
   * @return 0xRRGGBB
   */
  static int rgb(double lightness, double chroma, double hueDegrees) {
    double hue = Math.toRadians(hueDegrees);
    double low = 0;
    double high = chroma;
    if (!inGamut(lightness, chroma, hue)) {
      for (int i = 0; i < 24; i++) {
        double middle = (low + high) / 2;
        if (inGamut(lightness, middle, hue)) {
          low = middle;
        } else {
          high = middle;
        }
      }
      high = low;
    }
    double[] linear = linear(lightness, high * Math.cos(hue), high * Math.sin(hue));
    return eightBit(linear[0]) << 16 | eightBit(linear[1]) << 8 | eightBit(linear[2]);
  }

  private static int eightBit(double linear) {
    double clipped = Math.max(0, Math.min(1, linear));
    double encoded =
        clipped <= 0.0031308 ? 12.92 * clipped : 1.055 * Math.pow(clipped, 1 / 2.4) - 0.055;
    return (int) Math.round(255 * encoded);
  }

  /** L* of an sRGB colour; what is left of it in a grey print. */
  static double lightness(int rgb) {
    double y =
        0.2126 * decoded(rgb >> 16 & 0xFF)
            + 0.7152 * decoded(rgb >> 8 & 0xFF)
            + 0.0722 * decoded(rgb & 0xFF);
    double f = y > DELTA * DELTA * DELTA ? Math.cbrt(y) : y / (3 * DELTA * DELTA) + 4.0 / 29;
    return 116 * f - 16;
  }

  private static double decoded(int eightBit) {
    double v = eightBit / 255.0;
    return v <= 0.04045 ? v / 12.92 : Math.pow((v + 0.055) / 1.055, 2.4);
  }
}
