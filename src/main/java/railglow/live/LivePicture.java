package railglow.live;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.Arrays;
import railglow.thermal.Plane;
import railglow.thermal.Samples;

/**
 * A picture for the page: u32 number, u16 width, u16 height, f32 value of the lowest level, f32
 * value of the highest, then one level 0..254 a pixel (255: no value), little-endian, row-major.
 */
final class LivePicture {
  static final int HEADER_BYTES = 16;
  private static final int HIGHEST_LEVEL = 254;
  private static final int NO_VALUE = 255;
  private static final int SAMPLED = 4096;

  private LivePicture() {}

  /** From the lowest to the highest value, a few odd pixels left aside. */
  static byte[] ofTemperatures(long number, Samples samples, LiveFacts facts) {
    int pixels = samples.width() * samples.height();
    int stride = Math.max(1, pixels / SAMPLED);
    double[] some = new double[(pixels + stride - 1) / stride];
    for (int i = 0; i < some.length; i++) {
      some[i] = samples.valueAt(i * stride);
    }
    Arrays.sort(some);
    double low = some[some.length / 200];
    double high = some[some.length - 1 - some.length / 1000];
    high = high > low ? high : low + 1;
    ByteBuffer packet =
        header(
            number,
            samples.width(),
            samples.height(),
            facts.pictureValue(low),
            facts.pictureValue(high));
    double scale = HIGHEST_LEVEL / (high - low);
    for (int i = 0; i < pixels; i++) {
      packet.put(level((samples.valueAt(i) - low) * scale));
    }
    return packet.array();
  }

  /** As far below zero as above. */
  static byte[] ofDifference(long number, Plane plane) {
    float reach = 0;
    for (float value : plane.values()) {
      reach = Float.isFinite(value) ? Math.max(reach, Math.abs(value)) : reach;
    }
    reach = reach > 0 ? reach : 1;
    ByteBuffer packet = header(number, plane.width(), plane.height(), -reach, reach);
    float scale = HIGHEST_LEVEL / (2 * reach);
    for (float value : plane.values()) {
      packet.put(level((value + reach) * scale));
    }
    return packet.array();
  }

  private static ByteBuffer header(long number, int width, int height, double low, double high) {
    return ByteBuffer.allocate(HEADER_BYTES + width * height)
        .order(ByteOrder.LITTLE_ENDIAN)
        .putInt((int) number)
        .putShort((short) width)
        .putShort((short) height)
        .putFloat((float) low)
        .putFloat((float) high);
  }

  private static byte level(double value) {
    if (Double.isNaN(value)) {
      return (byte) NO_VALUE;
    }
    return (byte) Math.max(0, Math.min(HIGHEST_LEVEL, Math.round(value)));
  }
}
