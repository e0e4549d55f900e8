package railglow.board.compare;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.apache.commons.statistics.distribution.NormalDistribution;
import railglow.board.geometry.BoardPosition;
import railglow.board.geometry.PixelPosition;
import railglow.board.geometry.Registration;
import railglow.thermal.Plane;

/**
 * The difference of two runs' rises per watt over the whole picture, place by place of the board:
 * also where neither run alone shows a source. Pure and deterministic.
 *
 * <p>Both planes are smoothed; the error of a difference holds the noise of both, how well a rise
 * per watt is repeated at all, and what the error of the registrations does where the heat is
 * steep. Every place of the picture was looked at, so its probability is multiplied by the number
 * of pixels (Bonferroni).
 *
 * @param places where the runs surely differ, the largest difference first
 * @param smallestKelvinPerWatt a difference of this size would have been called with 95 %
 * @param noiseKelvinPerWatt standard deviation of a difference where nothing is hot
 */
public record PlaneComparison(
    List<Place> places, double smallestKelvinPerWatt, double noiseKelvinPerWatt) {
  private static final double SMOOTH_PIXELS = 2;
  private static final double ERROR = 0.01;
  private static final double APART_PIXELS = 8;
  private static final int MOST_PLACES = 5;
  private static final double RING_PIXELS = 30;
  private static final double RING_SHARE = 0.5;
  private static final double SURE_SIGMAS = 4;
  private static final double ABOUT_AS_WARM = 0.5;
  private static final double NINETY_FIVE = 1.645;
  private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);

  public PlaneComparison {
    places = List.copyOf(places);
  }

  /**
   * A place at which the runs differ.
   *
   * @param column in the second run's picture
   * @param row likewise
   * @param difference second minus first, K/W
   * @param sigma its standard deviation
   * @param p that chance alone shows such a difference anywhere in the picture
   */
  public record Place(
      double column,
      double row,
      Optional<BoardPosition> board,
      double difference,
      double sigma,
      double p) {}

  /**
   * One run's plane.
   *
   * @param inPhase mean ON minus OFF, K
   * @param watts at the board, above 0
   * @param registration empty when the camera has not moved between the runs
   */
  public record Side(Plane inPhase, double watts, Optional<Registration> registration) {}

  public static PlaneComparison of(Side first, Side second) {
    SmoothPlane a = new SmoothPlane(first.inPhase(), SMOOTH_PIXELS);
    SmoothPlane b = new SmoothPlane(second.inPhase(), SMOOTH_PIXELS);
    double noise = Math.hypot(a.noise() / first.watts(), b.noise() / second.watts());
    List<Place> all = new ArrayList<>();
    int looked = 0;
    double threshold = threshold(b.width() * b.height());
    for (int row = 1; row < b.height() - 1; row++) {
      for (int column = 1; column < b.width() - 1; column++) {
        Place place = place(first, second, a, b, noise, column, row);
        if (place != null) {
          looked++;
          if (Math.abs(place.difference()) > threshold * place.sigma()) {
            all.add(place);
          }
        }
      }
    }
    double family = looked;
    List<Place> places = new ArrayList<>();
    all.sort(Comparator.comparingDouble(place -> -Math.abs(place.difference())));
    for (Place place : all) {
      if (places.size() < MOST_PLACES
          && places.stream().allMatch(other -> apart(other, place) && !isRingOf(other, place))) {
        double z = Math.abs(place.difference()) / place.sigma();
        double p = Math.min(1, family * 2 * NORMAL.survivalProbability(z));
        places.add(
            new Place(
                place.column(), place.row(), place.board(), place.difference(), place.sigma(), p));
      }
    }
    return new PlaneComparison(places, (threshold + NINETY_FIVE) * noise, noise);
  }

  private static double threshold(int pixels) {
    return NORMAL.inverseSurvivalProbability(ERROR / (2.0 * pixels));
  }

  private static boolean apart(Place a, Place b) {
    return Math.hypot(a.column() - b.column(), a.row() - b.row()) > APART_PIXELS;
  }

  /**
   * Heat spreads late: around a warm place the board lags the pulse by so much that it seems to
   * cool in step. Such a ring belongs to the place in its middle.
   */
  private static boolean isRingOf(Place middle, Place place) {
    return Math.signum(middle.difference()) != Math.signum(place.difference())
        && Math.abs(place.difference()) < RING_SHARE * Math.abs(middle.difference())
        && Math.hypot(middle.column() - place.column(), middle.row() - place.row()) < RING_PIXELS;
  }

  /**
   * Whether both pictures surely show heat at a place, and about as much of it per watt.
   *
   * @param column in the second run's picture
   * @param row likewise
   */
  public static boolean asWarm(Side first, Side second, double column, double row) {
    SmoothPlane a = new SmoothPlane(first.inPhase(), SMOOTH_PIXELS);
    SmoothPlane b = new SmoothPlane(second.inPhase(), SMOOTH_PIXELS);
    double noise = Math.hypot(a.noise() / first.watts(), b.noise() / second.watts());
    Place place = place(first, second, a, b, noise, column, row);
    if (place == null) {
      return false;
    }
    double there = b.at(column, row) / second.watts();
    double here = there - place.difference();
    double least = Math.min(here, there);
    return least > SURE_SIGMAS * place.sigma()
        && Math.abs(place.difference()) < ABOUT_AS_WARM * Math.max(here, there);
  }

  /** Null where the first run's picture does not show this place. */
  private static Place place(
      Side first,
      Side second,
      SmoothPlane a,
      SmoothPlane b,
      double noise,
      double column,
      double row) {
    double fromColumn = column;
    double fromRow = row;
    double misplaced = 0;
    Optional<BoardPosition> board = Optional.empty();
    if (second.registration().isPresent() && first.registration().isPresent()) {
      BoardPosition at = second.registration().get().toBoard(column, row);
      PixelPosition seen = first.registration().get().toPixel(at.xMillimetres(), at.yMillimetres());
      fromColumn = seen.column();
      fromRow = seen.row();
      BoardPosition back = first.registration().get().toBoard(fromColumn, fromRow);
      double scale =
          first.registration().get().pixelsPerMillimetre(at.xMillimetres(), at.yMillimetres());
      misplaced =
          scale
              * Math.sqrt(
                  (at.xVariance() + at.yVariance() + back.xVariance() + back.yVariance()) / 2);
      board = Optional.of(at);
    }
    double there = b.at(column, row) / second.watts();
    double here = a.at(fromColumn, fromRow) / first.watts();
    double difference = there - here;
    double repeated = PerWatt.REPEAT_SHARE * Math.hypot(here, there);
    double steep =
        Math.max(
            a.steepness(fromColumn, fromRow) / first.watts(),
            b.steepness(column, row) / second.watts());
    double sigma = Math.hypot(Math.hypot(noise, repeated), steep * misplaced);
    return Double.isFinite(difference) && Double.isFinite(sigma) && sigma > 0
        ? new Place(column, row, board, difference, sigma, Double.NaN)
        : null;
  }
}
