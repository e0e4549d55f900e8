package railglow.sim.picture;

import java.util.Arrays;
import java.util.List;
import railglow.sim.heat.BoardHeat;
import railglow.sim.heat.PlacedPart;

/**
 * Turns temperatures of board and parts into the apparent rise of each pixel: projection, lens
 * blur, emissivity and reflections. For the small differences of a repair bench the apparent rise
 * is emissivity x rise + (1 - emissivity) x rise of what is mirrored; within 1e-3 of Planck's law
 * in the band 8 to 14 um for a step of 1 K.
 *
 * <p>Deterministic. Not thread-safe.
 */
public final class BoardScene {
  private final int width;
  private final int height;
  private final BoardHeat heat;
  private final Reflection reflection;
  private final float mirroredRise;
  private final int[] partAt;
  private final int[] cellAt;
  private final float[] weightRight;
  private final float[] weightUp;
  private final float[] emissivity;
  private final float[] scratch;
  private final PictureLag coat;

  /**
   * @param boardEmissivity of solder mask
   * @param mirroredRiseKelvin how much warmer than the room the surroundings are that the board
   *     mirrors everywhere
   * @param coatSeconds time constant of a coat over everything, through which the camera sees the
   *     board's heat late; 0 for none
   */
  public BoardScene(
      int width,
      int height,
      BoardHeat heat,
      BoardView view,
      double boardEmissivity,
      double mirroredRiseKelvin,
      double coatSeconds,
      Reflection reflection) {
    this.width = width;
    this.height = height;
    this.heat = heat;
    this.reflection = reflection;
    mirroredRise = (float) mirroredRiseKelvin;
    int pixels = width * height;
    partAt = new int[pixels];
    cellAt = new int[pixels];
    weightRight = new float[pixels];
    weightUp = new float[pixels];
    emissivity = new float[pixels];
    scratch = new float[pixels];
    coat = new PictureLag(pixels, coatSeconds);
    project(view, (float) boardEmissivity);
  }

  public int width() {
    return width;
  }

  public int height() {
    return height;
  }

  private void project(BoardView view, float boardEmissivity) {
    Arrays.fill(partAt, -1);
    double cellMillimetres = heat.plate().cellMetres() * 1e3;
    int columns = heat.plate().columns();
    int rows = heat.plate().rows();
    List<PlacedPart> parts = heat.parts();
    for (int i = 0; i < partAt.length; i++) {
      double x = view.xMillimetres(i % width, i / width);
      double y = view.yMillimetres(i % width, i / width);
      double column = x / cellMillimetres - 0.5;
      double row = y / cellMillimetres - 0.5;
      if (column < -0.5 || row < -0.5 || column > columns - 0.5 || row > rows - 0.5) {
        cellAt[i] = -1;
        emissivity[i] = 0.95f;
        continue;
      }
      int left = (int) Math.max(0, Math.min(columns - 2, Math.floor(column)));
      int lower = (int) Math.max(0, Math.min(rows - 2, Math.floor(row)));
      cellAt[i] = lower * columns + left;
      weightRight[i] = (float) Math.max(0, Math.min(1, column - left));
      weightUp[i] = (float) Math.max(0, Math.min(1, row - lower));
      partAt[i] = partOver(parts, x * 1e-3, y * 1e-3);
      emissivity[i] = partAt[i] < 0 ? boardEmissivity : (float) parts.get(partAt[i]).emissivity();
    }
  }

  private static int partOver(List<PlacedPart> parts, double xMetres, double yMetres) {
    for (int k = 0; k < parts.size(); k++) {
      PlacedPart part = parts.get(k);
      if (part.onTop()
          && Math.abs(xMetres - part.xMetres()) <= part.widthMetres() / 2
          && Math.abs(yMetres - part.yMetres()) <= part.heightMetres() / 2) {
        return k;
      }
    }
    return -1;
  }

  /**
   * Writes the apparent rise above the room of each pixel, kelvin, as the lens delivers it.
   *
   * @param seconds ascending
   */
  public void render(double seconds, float[] out) {
    surface(out);
    coat.follow(seconds, out);
    for (int i = 0; i < out.length; i++) {
      out[i] = emissivity[i] * out[i] + (1 - emissivity[i]) * mirroredRise;
    }
    addReflection(seconds, out);
    blur(out);
  }

  /** The rise of what is at each pixel: part, board, or the room beside it. */
  private void surface(float[] out) {
    float[] rise = heat.plate().rise();
    int columns = heat.plate().columns();
    for (int i = 0; i < out.length; i++) {
      int cell = cellAt[i];
      out[i] = 0;
      if (partAt[i] >= 0) {
        out[i] = (float) heat.partRise(partAt[i]);
      } else if (cell >= 0) {
        float wr = weightRight[i];
        float lower = rise[cell] + wr * (rise[cell + 1] - rise[cell]);
        float above = rise[cell + columns];
        float upper = above + wr * (rise[cell + columns + 1] - above);
        out[i] = lower + weightUp[i] * (upper - lower);
      }
    }
  }

  private void addReflection(double seconds, float[] out) {
    if (reflection.riseKelvin() == 0) {
      return;
    }
    double column = reflection.column(seconds);
    double row = reflection.row(seconds);
    double sigma = reflection.sigmaPixels();
    int left = (int) Math.max(0, column - 3 * sigma);
    int right = (int) Math.min(width - 1, column + 3 * sigma);
    int top = (int) Math.max(0, row - 3 * sigma);
    int bottom = (int) Math.min(height - 1, row + 3 * sigma);
    for (int y = top; y <= bottom; y++) {
      for (int x = left; x <= right; x++) {
        double square = (x - column) * (x - column) + (y - row) * (y - row);
        double seen = reflection.riseKelvin() * Math.exp(-square / (2 * sigma * sigma));
        out[y * width + x] += (float) ((1 - emissivity[y * width + x]) * seen);
      }
    }
  }

  /** The lens: binomial 1-2-1 in both directions, sigma 0.71 pixel. */
  private void blur(float[] values) {
    for (int row = 0; row < height; row++) {
      int start = row * width;
      scratch[start] = 0.25f * (3 * values[start] + values[start + 1]);
      for (int i = start + 1; i < start + width - 1; i++) {
        scratch[i] = 0.25f * (values[i - 1] + 2 * values[i] + values[i + 1]);
      }
      int end = start + width - 1;
      scratch[end] = 0.25f * (values[end - 1] + 3 * values[end]);
    }
    for (int row = 0; row < height; row++) {
      int start = row * width;
      int above = row == 0 ? start : start - width;
      int below = row == height - 1 ? start : start + width;
      for (int x = 0; x < width; x++) {
        values[start + x] =
            0.25f * (scratch[above + x] + 2 * scratch[start + x] + scratch[below + x]);
      }
    }
  }
}
