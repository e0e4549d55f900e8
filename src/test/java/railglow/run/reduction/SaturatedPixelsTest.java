package railglow.run.reduction;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import railglow.thermal.CountSamples;
import railglow.thermal.Plane;
import railglow.thermal.QuarterMeans;

/** Every pixel at the end of the scale is left out, and no other, wherever in the picture it is. */
class SaturatedPixelsTest {
  @ParameterizedTest
  @CsvSource({
    "64, 48, 65535, 3",
    "91, 90, 16383, 5",
    "91, 91, 40000.5, 1",
    "5, 3, 1, 15",
    "128, 64, 0, 8192"
  })
  void thoseAtTheLevelAreLeftOutAndNoOther(int width, int height, double level, int many) {
    Random random = new Random(7);
    int pixels = width * height;
    int least = (int) Math.ceil(level);
    for (int trial = 0; trial < 20; trial++) {
      short[] counts = new short[pixels];
      for (int i = 0; i < pixels; i++) {
        counts[i] = (short) random.nextInt(Math.max(1, least));
      }
      boolean[] hot = new boolean[pixels];
      for (int n = 0; n < many; n++) {
        int at = n == 0 ? pixels - 1 : n == 1 ? 0 : random.nextInt(pixels);
        hot[at] = true;
        counts[at] = (short) (least + random.nextInt(0x10000 - least));
      }
      SaturatedPixels watched = new SaturatedPixels(width, height, level);
      watched.watch(new CountSamples(width, height, counts));
      int[] expected = IntStream.range(0, pixels).filter(i -> hot[i] || least == 0).toArray();
      assertEquals(Arrays.toString(expected), Arrays.toString(blanked(watched, width, height)));
    }
  }

  private static int[] blanked(SaturatedPixels watched, int width, int height) {
    QuarterMeans means =
        new QuarterMeans(
            0,
            new Plane(width, height),
            new Plane(width, height),
            new Plane(width, height),
            new Plane(width, height),
            new int[] {1, 1, 1, 1});
    watched.blank(means);
    float[] values = means.q3().values();
    return IntStream.range(0, values.length).filter(i -> Float.isNaN(values[i])).toArray();
  }
}
