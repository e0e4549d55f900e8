package railglow.camera.motion;

import railglow.thermal.CountSamples;
import railglow.thermal.FloatSamples;
import railglow.thermal.Samples;

/** Moves the pixels of whole frames by fractions of a pixel. Not thread-safe. */
final class FrameShift {
  private static final int MAX_COUNT = 65535;
  private final Translation translation;
  private final float[] values;

  FrameShift(int width, int height) {
    translation = new Translation(width, height);
    values = new float[width * height];
  }

  /** Undoes a shift of the scene in place: what stood at (x + dx, y + dy) comes to (x, y). */
  void moveBack(Samples samples, double dx, double dy) {
    if (samples instanceof FloatSamples floats) {
      translation.apply(floats.values(), dx, dy, values);
      System.arraycopy(values, 0, floats.values(), 0, values.length);
      return;
    }
    short[] counts = ((CountSamples) samples).counts();
    for (int i = 0; i < counts.length; i++) {
      values[i] = counts[i] & 0xFFFF;
    }
    translation.apply(values, dx, dy, values);
    for (int i = 0; i < counts.length; i++) {
      counts[i] = (short) Math.max(0, Math.min(MAX_COUNT, Math.round(values[i])));
    }
  }
}
