package railglow.camera.motion;

import railglow.thermal.CountSamples;
import railglow.thermal.FloatSamples;
import railglow.thermal.Samples;

/** Moves the pixels of whole frames by fractions of a pixel. Not thread-safe. */
final class FrameShift {
  private static final int MAX_COUNT = 65535;
  private final int width;
  private final Translation translation;
  private final float[][] rows;
  private final float[][] movedRows;
  private final Samples moved;

  FrameShift(Samples like) {
    width = like.width();
    translation = new Translation(width, like.height(), 0);
    rows = new float[like.height()][width];
    movedRows = new float[like.height()][width];
    moved = like.newLike();
  }

  /** Undoes a shift of the scene: what stood at (x + dx, y + dy) comes to (x, y). */
  Samples movedBack(Samples image, double dx, double dy) {
    if (image instanceof FloatSamples floats) {
      for (int row = 0; row < rows.length; row++) {
        System.arraycopy(floats.values(), row * width, rows[row], 0, width);
      }
      translation.apply(rows, dx, dy, movedRows);
      for (int row = 0; row < rows.length; row++) {
        System.arraycopy(movedRows[row], 0, ((FloatSamples) moved).values(), row * width, width);
      }
      return moved;
    }
    short[] counts = ((CountSamples) image).counts();
    for (int row = 0; row < rows.length; row++) {
      for (int x = 0; x < width; x++) {
        rows[row][x] = counts[row * width + x] & 0xFFFF;
      }
    }
    translation.apply(rows, dx, dy, movedRows);
    short[] into = ((CountSamples) moved).counts();
    for (int row = 0; row < rows.length; row++) {
      for (int x = 0; x < width; x++) {
        into[row * width + x] =
            (short) Math.max(0, Math.min(MAX_COUNT, Math.round(movedRows[row][x])));
      }
    }
    return moved;
  }
}
