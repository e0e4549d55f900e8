package railglow.camera.motion;

import railglow.thermal.CountSamples;
import railglow.thermal.FloatSamples;
import railglow.thermal.Samples;

/** Moves the pixels of whole frames by fractions of a pixel. Not thread-safe. */
final class FrameShift {
  private static final int MAX_COUNT = 65535;
  private final Translation translation;
  private final float[] values;
  private final Samples moved;

  FrameShift(Samples like) {
    translation = new Translation(like.width(), like.height());
    values = new float[like.width() * like.height()];
    moved = like.newLike();
  }

  /** Undoes a shift of the scene: what stood at (x + dx, y + dy) comes to (x, y). */
  Samples movedBack(Samples image, double dx, double dy) {
    if (image instanceof FloatSamples floats) {
      translation.apply(floats.values(), dx, dy, ((FloatSamples) moved).values());
      return moved;
    }
    short[] counts = ((CountSamples) image).counts();
    for (int i = 0; i < counts.length; i++) {
      values[i] = counts[i] & 0xFFFF;
    }
    translation.apply(values, dx, dy, values);
    short[] into = ((CountSamples) moved).counts();
    for (int i = 0; i < into.length; i++) {
      into[i] = (short) Math.max(0, Math.min(MAX_COUNT, Math.round(values[i])));
    }
    return moved;
  }
}
