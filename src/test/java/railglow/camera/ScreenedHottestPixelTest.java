package railglow.camera;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import railglow.observed.Frame;
import railglow.thermal.CountSamples;
import railglow.thermal.FloatSamples;

/**
 * What is left out by screening is never the hottest: counts, which are screened, give the same
 * bits as the same values as floats, which are looked at one by one.
 */
class ScreenedHottestPixelTest {
  private final Random random = new Random(85);

  @ParameterizedTest
  @CsvSource({
    "97, 61, 0.01, -273.15",
    "97, 61, -0.013, 400",
    "129, 127, 0.04, -40",
    "129, 127, -0.0371, 1000",
    "64, 64, 1, 0",
    "3, 1, 0.01, -273.15",
    "91, 137, 0.1, NaN",
    "91, 137, -0.1, NaN"
  })
  void everySceneGivesTheSameHottestPixelAsLookingAtEachOne(
      int width, int height, double kelvinPerCount, double celsiusAtZero) {
    for (int scene = 0; scene < 60; scene++) {
      Pair pair = new Pair(width, height, kelvinPerCount, celsiusAtZero);
      int base = random.nextInt(65536);
      int noise = scene % 6 == 0 ? 65536 : 1 << random.nextInt(10);
      int learnt = random.nextInt(6);
      short[] scenery = scenery(width * height, base, noise);
      for (int n = 0; n < learnt; n++) {
        pair.learn(noisy(scenery, 4));
      }
      short[] image = noisy(scenery, 4);
      for (int n = 0; n < 8; n++) {
        change(image);
        pair.look(noisy(image, n % 3));
      }
      pair.learn(noisy(scenery, 4));
      pair.look(noisy(image, 2));
    }
  }

  @Test
  void aPixelOneCountAboveTheBoundIsFoundWhereverItIs() {
    int pixels = 2 * PixelScreen.STRETCH + 1;
    for (boolean hotIsDark : new boolean[] {false, true}) {
      for (int base : new int[] {1, 32_767, 32_768, 65_534}) {
        PixelScreen screen = new PixelScreen(hotIsDark);
        short[] counts = new short[pixels];
        double[] means = new double[pixels];
        Arrays.fill(counts, (short) base);
        Arrays.fill(means, base);
        screen.riseFrom(means);
        int turned = hotIsDark ? 0xFFFF - base : base;
        for (int i = 0; i < pixels; i++) {
          int start = i - i % PixelScreen.STRETCH;
          counts[i] += (short) (hotIsDark ? -1 : 1);
          assertEquals(true, screen.mayRiseBeyond(counts, start, 0), "rise at " + i);
          assertEquals(true, screen.mayBeAbove(counts, start, turned), "count at " + i);
          counts[i] = (short) base;
          assertEquals(false, screen.mayRiseBeyond(counts, start, 0), "no rise at " + i);
        }
      }
    }
  }

  /** Mostly like its neighbours, in places anything. */
  private short[] scenery(int pixels, int base, int noise) {
    short[] counts = new short[pixels];
    for (int i = 0; i < pixels; i++) {
      counts[i] = within(base + random.nextInt(noise) - noise / 2);
    }
    return counts;
  }

  private short[] noisy(short[] image, int noise) {
    short[] counts = image.clone();
    for (int i = 0; noise > 0 && i < counts.length; i++) {
      counts[i] = within((counts[i] & 0xFFFF) + random.nextInt(2 * noise + 1) - noise);
    }
    return counts;
  }

  /** Stuck and dead pixels, steps of a few counts, pairs, and ends of the scale. */
  private void change(short[] image) {
    for (int k = random.nextInt(5); k > 0; k--) {
      int at = random.nextInt(image.length);
      int count = image[at] & 0xFFFF;
      int step = random.nextInt(1 << random.nextInt(15)) - 20;
      int to = random.nextInt(4) == 0 ? (random.nextBoolean() ? 0 : 0xFFFF) : count + step;
      image[at] = within(to);
      if (random.nextBoolean()) {
        image[Math.min(at + 1, image.length - 1)] = within(to - step / 2);
      }
    }
  }

  private static short within(int count) {
    return (short) Math.max(0, Math.min(0xFFFF, count));
  }

  /** The same camera with counts and with floats. */
  private static final class Pair {
    private final int width;
    private final int height;
    private final HottestPixel counted;
    private final HottestPixel plain;

    Pair(int width, int height, double kelvinPerCount, double celsiusAtZero) {
      CameraProfile camera =
          new CameraProfile(
              "test", width, height, 25, kelvinPerCount, celsiusAtZero, 0.05, 0.04, 0.01);
      this.width = width;
      this.height = height;
      this.counted = new HottestPixel(camera);
      this.plain = new HottestPixel(camera);
    }

    void learn(short[] image) {
      counted.learn(counts(image));
      plain.learn(floats(image));
    }

    void look(short[] image) {
      counted.look(counts(image));
      plain.look(floats(image));
      assertEquals(plain.riseKelvin(), counted.riseKelvin());
      assertEquals(plain.celsius(), counted.celsius());
      assertEquals(plain.column(), counted.column());
      assertEquals(plain.row(), counted.row());
    }

    private Frame counts(short[] image) {
      Frame frame = new Frame(new CountSamples(width, height, image));
      frame.begin(0, 0);
      return frame;
    }

    private Frame floats(short[] image) {
      float[] values = new float[image.length];
      for (int i = 0; i < values.length; i++) {
        values[i] = image[i] & 0xFFFF;
      }
      Frame frame = new Frame(new FloatSamples(width, height, values));
      frame.begin(0, 0);
      return frame;
    }
  }
}
