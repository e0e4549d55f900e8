package railglow.board;

import java.util.Arrays;
import railglow.board.places.Place;
import railglow.board.places.PlacePixels;
import railglow.thermal.Plane;

/**
 * What the board mirrors, read off a reflector that lies beside it: crumpled and flattened foil of
 * aluminium sends back what comes from everywhere around and next to nothing of its own (the
 * reflector method of ISO 18434-1 and ASTM E1862: the camera is set to emissivity 1, and what it
 * shows of the foil is the reflected temperature). Pure.
 *
 * @param celsius the middle of what the foil's pixels show
 * @param sigmaKelvin its standard deviation as a value for other places of the board: the scatter
 *     between the foil's facets, each of which looks elsewhere, and what the foil itself radiates
 */
record ReflectedTemperature(double celsius, double sigmaKelvin) {
  /** Aluminium, not anodised: 0.02 to 0.1 in the published tables of long-wave emissivity. */
  private static final double FOIL_EMISSIVITY = 0.1;

  /** Fewer facets tell nothing about their scatter. */
  private static final int LEAST_PIXELS = 9;

  /** A robust standard deviation is this many times the median distance from the median. */
  private static final double SIGMA_PER_MEDIAN_DISTANCE = 1.4826;

  /**
   * The board with what its reflector showed, instead of what its file states; the board as it is
   * where it names no reflector.
   *
   * <p>Where the reflector can't be read, what the file states stays and is said to be so.
   *
   * @param background before the first pulse, apparent temperatures in degC
   */
  static Board measured(Board board, Plane background) {
    BoardSurfaces surfaces = board.care().surfaces();
    if (surfaces.reflector().isEmpty()) {
      return board;
    }
    return board.withCare(
        board.care().withSurfaces(read(surfaces, surfaces.reflector().get(), board, background)));
  }

  private static BoardSurfaces read(
      BoardSurfaces stated, Place reflector, Board board, Plane background) {
    try {
      ReflectedTemperature seen =
          of(pixels(reflector, board, background.width(), background.height()), background);
      return stated.withReflected(
          seen.celsius(), seen.sigmaKelvin(), "measured at " + reflector.name());
    } catch (IllegalArgumentException e) {
      return stated.withReflected(
          stated.reflectedCelsius(),
          stated.reflectedSigmaKelvin(),
          stated.reflectedFrom() + ", since " + reflector.name() + " could not be read");
    }
  }

  /**
   * The pixels of a reflector.
   *
   * @throws IllegalArgumentException with one sentence when it is not in the picture or too small
   */
  static PlacePixels pixels(Place reflector, Board board, int width, int height) {
    PlacePixels pixels = PlacePixels.of(reflector, board.registration(), width, height);
    if (pixels.indices().length < LEAST_PIXELS) {
      throw new IllegalArgumentException(
          "reflector '"
              + pixels.name()
              + "' covers "
              + pixels.indices().length
              + " pixels; at least "
              + LEAST_PIXELS
              + " are needed: use a larger piece of foil");
    }
    return pixels;
  }

  private static ReflectedTemperature of(PlacePixels reflector, Plane background) {
    double[] facets =
        Arrays.stream(reflector.indices())
            .mapToDouble(i -> background.values()[i])
            .filter(Double::isFinite)
            .toArray();
    if (facets.length < LEAST_PIXELS) {
      throw new IllegalArgumentException(
          "reflector '" + reflector.name() + "' has only " + facets.length + " sound pixels");
    }
    double middle = median(facets);
    double scatter =
        SIGMA_PER_MEDIAN_DISTANCE
            * median(Arrays.stream(facets).map(celsius -> Math.abs(celsius - middle)).toArray());
    double[] all = new double[background.values().length];
    Arrays.setAll(all, i -> background.values()[i]);
    double own =
        FOIL_EMISSIVITY
            * Math.abs(median(Arrays.stream(all).filter(Double::isFinite).toArray()) - middle);
    return new ReflectedTemperature(middle, Math.hypot(scatter, own));
  }

  private static double median(double[] values) {
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    int n = sorted.length;
    return (sorted[(n - 1) / 2] + sorted[n / 2]) / 2;
  }
}
