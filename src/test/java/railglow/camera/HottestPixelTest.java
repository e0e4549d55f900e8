package railglow.camera;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Test;
import railglow.observed.Frame;
import railglow.thermal.CountSamples;

class HottestPixelTest {
  private static final int WIDTH = 40;
  private static final int HEIGHT = 30;
  private static final CameraProfile CAMERA =
      new CameraProfile("test", WIDTH, HEIGHT, 25, 0.01, -273.15, 0.05, 0.04, 0.01);
  private final Random random = new Random(11);
  private final HottestPixel hottest = new HottestPixel(CAMERA);

  @Test
  void aSourceIsFoundWithItsRiseAndItsTemperature() {
    learn(25);
    CountSamples image = room();
    spot(image, 17, 9, 12);
    hottest.look(frame(image));
    assertEquals(12, hottest.riseKelvin(), 0.3);
    assertEquals(37, hottest.celsius(), 0.3);
    assertEquals(17, hottest.column());
    assertEquals(9, hottest.row());
  }

  @Test
  void aWarmPartOfTheSceneIsHotButHasNotRisen() {
    for (int n = 0; n < 25; n++) {
      hottest.learn(frame(warmScene()));
    }
    hottest.look(frame(warmScene()));
    assertTrue(hottest.celsius() > 44, "a chip that was warm before is " + hottest.celsius());
    assertTrue(hottest.riseKelvin() < 0.5, "but has risen by " + hottest.riseKelvin());
  }

  @Test
  void aStuckPixelIsNoHeat() {
    for (int n = 0; n < 25; n++) {
      hottest.learn(frame(withStuckPixel()));
    }
    for (int n = 0; n < 5; n++) {
      hottest.look(frame(withStuckPixel()));
      assertTrue(hottest.celsius() < 26, "celsius " + hottest.celsius());
      assertTrue(hottest.riseKelvin() < 1, "rise " + hottest.riseKelvin());
    }
  }

  @Test
  void aSinglePixelThatFlickersOnceIsNotBelievedButOneThatStaysIs() {
    learn(25);
    hottest.look(frame(withStuckPixel()));
    assertTrue(hottest.riseKelvin() < 1);
    hottest.look(frame(room()));
    hottest.look(frame(withStuckPixel()));
    hottest.look(frame(withStuckPixel()));
    assertTrue(hottest.riseKelvin() < 1);
    hottest.look(frame(withStuckPixel()));
    assertEquals(75, hottest.riseKelvin(), 0.5);
    assertEquals(100, hottest.celsius(), 0.5);
  }

  @Test
  void aSourceInTheCornerCounts() {
    learn(5);
    CountSamples image = room();
    spot(image, 0, 0, 30);
    hottest.look(frame(image));
    assertEquals(30, hottest.riseKelvin(), 0.5);
  }

  @Test
  void withoutLeadInOnlyTheTemperatureIsKnown() {
    CountSamples image = room();
    spot(image, 5, 6, 20);
    hottest.look(frame(image));
    assertTrue(Double.isNaN(hottest.riseKelvin()));
    assertEquals(45, hottest.celsius(), 0.5);
    assertEquals(5, hottest.column());
  }

  @Test
  void withoutAScaleNothingIsClaimed() {
    HottestPixel counts =
        new HottestPixel(
            new CameraProfile("raw", WIDTH, HEIGHT, 25, Double.NaN, Double.NaN, Double.NaN, 0, 0));
    counts.learn(frame(room()));
    counts.look(frame(room()));
    assertTrue(Double.isNaN(counts.celsius()));
    assertTrue(Double.isNaN(counts.riseKelvin()));
  }

  private void learn(int frames) {
    for (int n = 0; n < frames; n++) {
      hottest.learn(frame(room()));
    }
  }

  /** 25 degrees Celsius everywhere, 50 mK of noise. */
  private CountSamples room() {
    CountSamples image = new CountSamples(WIDTH, HEIGHT);
    for (int i = 0; i < WIDTH * HEIGHT; i++) {
      image.counts()[i] = (short) Math.round(29_815 + 5 * random.nextGaussian());
    }
    return image;
  }

  private CountSamples withStuckPixel() {
    CountSamples image = room();
    image.counts()[12 * WIDTH + 3] = (short) (29_815 + 7_500);
    return image;
  }

  private CountSamples warmScene() {
    CountSamples image = room();
    spot(image, 20, 20, 20);
    return image;
  }

  /** A source about as sharp as optics allow: sigma of 0.7 pixels. */
  private static void spot(CountSamples image, int column, int row, double kelvin) {
    for (int y = Math.max(0, row - 3); y < Math.min(HEIGHT, row + 4); y++) {
      for (int x = Math.max(0, column - 3); x < Math.min(WIDTH, column + 4); x++) {
        double squared = (x - column) * (x - column) + (y - row) * (y - row);
        double rise = kelvin * Math.exp(-squared / (2 * 0.7 * 0.7));
        image.counts()[y * WIDTH + x] += (short) Math.round(100 * rise);
      }
    }
  }

  private static Frame frame(CountSamples image) {
    Frame frame = new Frame(image);
    frame.begin(0, 0);
    return frame;
  }
}
