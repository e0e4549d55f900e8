package railglow.thermal.inverse;

import railglow.thermal.Plane;

/**
 * Both channels in a window, tapered at its edges and transformed. Arrays are not copied.
 *
 * @param inPhase real and imaginary part
 * @param quadrature likewise
 */
record ChannelSpectra(Window window, Spectrum spectrum, double[][] inPhase, double[][] quadrature) {
  /** Zeros beside the window, so that its ends do not touch in the transform. */
  private static final int PADDING = 24;

  /** A taper at the cut edges, pixels. */
  private static final int TAPER = 6;

  static ChannelSpectra of(RiseMaps maps, Window window) {
    Spectrum spectrum = new Spectrum(window.width(), window.height(), PADDING);
    return new ChannelSpectra(
        window,
        spectrum,
        transformed(maps.inPhase(), window, spectrum),
        transformed(maps.quadrature(), window, spectrum));
  }

  private static double[][] transformed(Plane plane, Window window, Spectrum spectrum) {
    double[][] data = {new double[spectrum.size()], new double[spectrum.size()]};
    for (int y = 0; y < window.height(); y++) {
      for (int x = 0; x < window.width(); x++) {
        float value = plane.at(window.left() + x, window.top() + y);
        if (Math.abs(value) < Float.MAX_VALUE) {
          data[0][y * spectrum.columns() + x] =
              value * taper(x, window.width()) * taper(y, window.height());
        }
      }
    }
    spectrum.forward(data);
    return data;
  }

  private static double taper(int at, int count) {
    double fromEdge = Math.min(at, count - 1 - at) + 0.5;
    return fromEdge >= TAPER ? 1 : 0.5 - 0.5 * Math.cos(Math.PI * fromEdge / TAPER);
  }
}
