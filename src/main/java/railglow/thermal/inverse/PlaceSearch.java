package railglow.thermal.inverse;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Places in a map of power that can be told apart. Not thread-safe. */
final class PlaceSearch {
  /** A place must stand out of the map's noise by this. */
  private static final double CLEAR_SIGMAS = 5;

  /** Weaker ones beside a strong one may be its ringing. */
  private static final double LEAST_SHARE = 0.05;

  /** Between two places the map falls to this share of the weaker one, or they are one. */
  private static final double DIP = 0.8;

  /** Power is summed this far around the places. */
  private static final double APERTURE_METRES = 8e-3;

  private final Window window;
  private final double[] held;
  private final int rowLength;
  private final double[] smooth;

  PlaceSearch(Window window, double[] held, int rowLength) {
    this.window = window;
    this.held = held;
    this.rowLength = rowLength;
    smooth = new double[window.pixels()];
    for (int y = 0; y < window.height(); y++) {
      for (int x = 0; x < window.width(); x++) {
        smooth[y * window.width() + x] = binomial(x, y);
      }
    }
  }

  /** A local summit in the window's own coordinates. */
  record Spot(int x, int y, double height) {}

  private double binomial(int x, int y) {
    double sum = 0;
    for (int dy = -1; dy <= 1; dy++) {
      for (int dx = -1; dx <= 1; dx++) {
        sum += (2 - Math.abs(dx)) * (2 - Math.abs(dy)) * value(x + dx, y + dy);
      }
    }
    return sum / 16;
  }

  private double value(int x, int y) {
    boolean inside = x >= 0 && x < window.width() && y >= 0 && y < window.height();
    return inside ? held[y * rowLength + x] : 0;
  }

  private double at(int x, int y) {
    boolean inside = x >= 0 && x < window.width() && y >= 0 && y < window.height();
    return inside ? smooth[y * window.width() + x] : 0;
  }

  /** Highest first. */
  List<Spot> spots(double resolutionPixels, double noise) {
    List<Spot> summits = new ArrayList<>();
    double highest = 0;
    for (int y = 0; y < window.height(); y++) {
      for (int x = 0; x < window.width(); x++) {
        double here = at(x, y);
        if (isSummit(x, y, here)) {
          summits.add(new Spot(x, y, here));
          highest = Math.max(highest, here);
        }
      }
    }
    summits.sort(
        Comparator.comparingDouble(Spot::height)
            .reversed()
            .thenComparingInt(Spot::y)
            .thenComparingInt(Spot::x));
    List<Spot> kept = new ArrayList<>();
    for (Spot spot : summits) {
      boolean clear = spot.height >= CLEAR_SIGMAS * noise && spot.height >= LEAST_SHARE * highest;
      if (clear && kept.stream().allMatch(other -> apart(spot, other, resolutionPixels))) {
        kept.add(spot);
      }
    }
    return kept;
  }

  private boolean isSummit(int x, int y, double here) {
    if (!(here > 0)) {
      return false;
    }
    for (int dy = -1; dy <= 1; dy++) {
      for (int dx = -1; dx <= 1; dx++) {
        boolean before = dy < 0 || (dy == 0 && dx < 0);
        double there = at(x + dx, y + dy);
        if ((dx != 0 || dy != 0) && (before ? there >= here : there > here)) {
          return false;
        }
      }
    }
    return true;
  }

  private boolean apart(Spot weak, Spot strong, double resolutionPixels) {
    double dx = strong.x - weak.x;
    double dy = strong.y - weak.y;
    double far = Math.hypot(dx, dy);
    if (far < resolutionPixels) {
      return false;
    }
    int steps = (int) Math.ceil(far);
    for (int k = 1; k < steps; k++) {
      int x = (int) Math.round(weak.x + dx * k / steps);
      int y = (int) Math.round(weak.y + dy * k / steps);
      if (at(x, y) <= DIP * weak.height) {
        return true;
      }
    }
    return false;
  }

  /** Which pixels of the padded picture lie near any of the spots. */
  boolean[] around(List<Spot> spots, int size, double metresPerPixel) {
    boolean[] inside = new boolean[size];
    double reach = APERTURE_METRES / metresPerPixel;
    for (int y = 0; y < window.height(); y++) {
      for (int x = 0; x < window.width(); x++) {
        int column = x;
        int row = y;
        inside[y * rowLength + x] =
            spots.stream().anyMatch(s -> Math.hypot(column - s.x, row - s.y) <= reach);
      }
    }
    return inside;
  }

  /** Shares the power among the spots: each pixel of the held map counts for the nearest. */
  List<PowerPlace> places(List<Spot> spots, double watts) {
    double[] sums = new double[spots.size()];
    double all = 0;
    for (int y = 0; y < window.height(); y++) {
      for (int x = 0; x < window.width(); x++) {
        double value = value(x, y);
        if (value > 0) {
          sums[nearest(spots, x, y)] += value;
          all += value;
        }
      }
    }
    List<PowerPlace> places = new ArrayList<>();
    for (int i = 0; i < spots.size(); i++) {
      Spot spot = spots.get(i);
      places.add(
          new PowerPlace(
              window.left() + spot.x + summit(spot, 1, 0),
              window.top() + spot.y + summit(spot, 0, 1),
              watts * sums[i] / all));
    }
    places.sort(Comparator.comparingDouble(PowerPlace::watts).reversed());
    return places;
  }

  /** Where between the pixels a parabola through three of them has its summit. */
  private double summit(Spot spot, int dx, int dy) {
    double before = at(spot.x - dx, spot.y - dy);
    double after = at(spot.x + dx, spot.y + dy);
    double bend = 2 * spot.height - before - after;
    return bend > 0 ? (after - before) / (2 * bend) : 0;
  }

  private static int nearest(List<Spot> spots, int x, int y) {
    int best = 0;
    for (int i = 1; i < spots.size(); i++) {
      Spot spot = spots.get(i);
      Spot than = spots.get(best);
      if (Math.hypot(x - spot.x, y - spot.y) < Math.hypot(x - than.x, y - than.y)) {
        best = i;
      }
    }
    return best;
  }
}
