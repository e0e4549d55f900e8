package railglow.board.places;

import java.util.BitSet;
import java.util.Locale;
import java.util.Optional;
import railglow.board.geometry.PixelPosition;
import railglow.board.geometry.Registration;

/**
 * The pixels that a place covers: a point its nearest pixel, a line every pixel it passes, an area
 * every pixel whose middle it holds, and at least the one at its own middle. Immutable.
 */
public final class PlacePixels {
  private static final double STEP = 0.25;
  private final String name;
  private final int[] indices;
  private final int width;

  private PlacePixels(String name, int[] indices, int width) {
    this.name = name;
    this.indices = indices;
    this.width = width;
  }

  /**
   * @param registration of the board; empty when there is none
   * @param width of the picture
   * @param height of the picture
   * @throws IllegalArgumentException with one sentence when the place is not in the picture, or on
   *     a board whose place in the picture is not known
   */
  public static PlacePixels of(
      Place place, Optional<Registration> registration, int width, int height) {
    int corners = place.xs().size();
    double[] columns = new double[corners];
    double[] rows = new double[corners];
    for (int i = 0; i < corners; i++) {
      if (place.space() == Place.Space.PICTURE) {
        columns[i] = place.xs().get(i);
        rows[i] = place.ys().get(i);
      } else {
        PixelPosition pixel = inPicture(place, registration, i);
        columns[i] = pixel.column();
        rows[i] = pixel.row();
      }
      if (!(columns[i] >= -0.5 && columns[i] < width - 0.5)
          || !(rows[i] >= -0.5 && rows[i] < height - 0.5)) {
        throw new IllegalArgumentException(
            String.format(
                Locale.ROOT,
                "place '%s' is not in the picture: column %.1f, row %.1f; allowed are columns 0 to"
                    + " %d and rows 0 to %d",
                place.name(),
                columns[i],
                rows[i],
                width - 1,
                height - 1));
      }
    }
    BitSet pixels = new BitSet();
    switch (place.shape()) {
      case POINT -> pixels.set(index(columns[0], rows[0], width));
      case LINE -> line(columns, rows, width, pixels);
      case AREA -> area(columns, rows, width, height, pixels);
    }
    return new PlacePixels(place.name(), pixels.stream().toArray(), width);
  }

  /** From runs as {@link #runs} gives them. */
  public static PlacePixels ofRuns(String name, int[] runs, int width, int height) {
    if (runs.length == 0 || runs.length % 3 != 0) {
      throw new IllegalArgumentException("the pixels of place '" + name + "' are not whole runs");
    }
    BitSet pixels = new BitSet();
    for (int i = 0; i < runs.length; i += 3) {
      if (runs[i] < 0 || runs[i] >= height || runs[i + 1] < 0 || runs[i + 2] >= width) {
        throw new IllegalArgumentException("place '" + name + "' is not in the picture");
      }
      pixels.set(runs[i] * width + runs[i + 1], runs[i] * width + runs[i + 2] + 1);
    }
    return new PlacePixels(name, pixels.stream().toArray(), width);
  }

  public String name() {
    return name;
  }

  /** Ascending, row by row; the array is the place's own: never change it. */
  public int[] indices() {
    return indices;
  }

  /** The same as row, first and last column of each stretch, one after the other. */
  public int[] runs() {
    int[] runs = new int[3 * indices.length];
    int used = 0;
    for (int i = 0; i < indices.length; i++) {
      int row = indices[i] / width;
      int column = indices[i] % width;
      boolean goesOn = used > 0 && runs[used - 3] == row && runs[used - 1] == column - 1;
      if (!goesOn) {
        runs[used] = row;
        runs[used + 1] = column;
        used += 3;
      }
      runs[used - 1] = column;
    }
    return java.util.Arrays.copyOf(runs, used);
  }

  private static PixelPosition inPicture(
      Place place, Optional<Registration> registration, int corner) {
    return registration
        .orElseThrow(
            () ->
                new IllegalArgumentException(
                    "place '"
                        + place.name()
                        + "' is given on the board, but the board's place in the picture is not"
                        + " known: give it in px, or add registration points to the board file"))
        .toPixel(place.xs().get(corner), place.ys().get(corner));
  }

  private static int index(double column, double row, int width) {
    return (int) Math.round(row) * width + (int) Math.round(column);
  }

  private static void line(double[] columns, double[] rows, int width, BitSet pixels) {
    double length = Math.hypot(columns[1] - columns[0], rows[1] - rows[0]);
    int steps = Math.max(1, (int) Math.ceil(length / STEP));
    for (int i = 0; i <= steps; i++) {
      double part = (double) i / steps;
      pixels.set(
          index(
              columns[0] + part * (columns[1] - columns[0]),
              rows[0] + part * (rows[1] - rows[0]),
              width));
    }
  }

  private static void area(double[] columns, double[] rows, int width, int height, BitSet pixels) {
    for (int row = 0; row < height; row++) {
      for (int column = 0; column < width; column++) {
        if (holds(columns, rows, column, row)) {
          pixels.set(row * width + column);
        }
      }
    }
    if (pixels.isEmpty()) {
      double middleColumn = java.util.Arrays.stream(columns).average().orElseThrow();
      double middleRow = java.util.Arrays.stream(rows).average().orElseThrow();
      pixels.set(index(middleColumn, middleRow, width));
    }
  }

  /** Even-odd rule; on the border counts as inside for the lower and left side. */
  private static boolean holds(double[] columns, double[] rows, double column, double row) {
    boolean inside = false;
    for (int i = 0, j = columns.length - 1; i < columns.length; j = i++) {
      boolean crosses = rows[i] > row != rows[j] > row;
      if (crosses
          && column
              < (columns[j] - columns[i]) * (row - rows[i]) / (rows[j] - rows[i]) + columns[i]) {
        inside = !inside;
      }
    }
    return inside;
  }
}
