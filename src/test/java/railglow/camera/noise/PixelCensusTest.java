package railglow.camera.noise;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import railglow.camera.RecordedFrames;
import railglow.camera.Recordings;
import railglow.observed.Frame;
import railglow.observed.FrameMark;
import railglow.thermal.CountSamples;

class PixelCensusTest {
  private static final int W = 40;
  private static final int H = 30;
  private final Random random = new Random(31);

  @Test
  void deadFlickeringAndSaturatedPixelsAreFoundAndNoOthers() {
    PixelCensus census = new PixelCensus(new CountSamples(W, H), 65_000);
    for (int n = 0; n < 60; n++) {
      CountSamples image = noisy();
      image.counts()[100] = 12_345;
      image.counts()[333] += (short) (n / 20 % 2 * 300);
      image.counts()[700] = (short) 65_001;
      census.add(frame(image));
    }
    PixelFaults faults = census.faults();
    assertArrayEquals(new int[] {100}, faults.indices(PixelFault.DEAD));
    assertArrayEquals(new int[] {333}, faults.indices(PixelFault.FLICKERING));
    assertArrayEquals(new int[] {700}, faults.indices(PixelFault.SATURATED));
    assertEquals(3, faults.count());
  }

  @Test
  void aColumnThatDoesNotFitItsNeighboursIsOutOfLine() {
    PixelCensus census = new PixelCensus(new CountSamples(W, H), Double.POSITIVE_INFINITY);
    for (int n = 0; n < 40; n++) {
      CountSamples image = noisy();
      for (int row = 0; row < H; row++) {
        image.counts()[row * W + 17] += (short) (row % 2 == 0 ? 90 : -90);
      }
      census.add(frame(image));
    }
    PixelFaults faults = census.faults();
    assertArrayEquals(
        IntStream.range(0, H).map(row -> row * W + 17).toArray(),
        faults.indices(PixelFault.OUT_OF_LINE));
  }

  @Test
  void faultyPixelsAreReplacedByTheirSoundNeighbours() {
    PixelFault[] faults = new PixelFault[9];
    faults[4] = PixelFault.DEAD;
    faults[5] = PixelFault.DEAD;
    CountSamples image = new CountSamples(3, 3, new short[] {10, 20, 30, 40, 0, 0, 70, 80, 90});
    new PixelFaults(3, faults).repair(image);
    assertEquals(Math.round((10 + 20 + 30 + 40 + 70 + 80 + 90) / 7.0), image.valueAt(4));
    assertEquals(55, image.valueAt(5));
    assertEquals(10, image.valueAt(0));
  }

  @Test
  void markedFramesAndShortRecordsClaimNothing() {
    PixelCensus census = new PixelCensus(new CountSamples(W, H), 65_000);
    for (int n = 0; n < 60; n++) {
      Frame frame = frame(new CountSamples(W, H));
      frame.marks().add(n % 2 == 0 ? FrameMark.DAMAGED : FrameMark.SHUTTER);
      census.add(frame);
    }
    assertEquals(0, census.frames());
    assertEquals(0, census.faults().count());
  }

  /** The truth is stated beside the recordings: row 36 is bad pixels; the others are whole. */
  @Test
  void theBadRowOfARealCameraIsFound() throws IOException {
    PixelFaults faults = measured("f_lepton3x_startup_ck_82");
    int[] outOfLine = faults.indices(PixelFault.OUT_OF_LINE);
    assertTrue(outOfLine.length >= 100, outOfLine.length + " pixels");
    for (int index : outOfLine) {
      assertEquals(36, index / 112);
    }
    PixelFaults sound = measured("a_lepton3_static_489");
    assertEquals(0, sound.count(PixelFault.DEAD));
    assertEquals(0, sound.count(PixelFault.OUT_OF_LINE));
    assertEquals(0, sound.count(PixelFault.FLICKERING));
  }

  private static PixelFaults measured(String name) throws IOException {
    try (RecordedFrames frames = Recordings.open(name)) {
      PixelCensus census = new PixelCensus(frames.newSamples(), Double.POSITIVE_INFINITY);
      for (int n = 0; n < frames.count(); n++) {
        Frame frame = new Frame(frames.newSamples());
        frame.begin(n, 0);
        frames.read(n, frame.samples());
        census.add(frame);
      }
      return census.faults();
    }
  }

  private CountSamples noisy() {
    CountSamples image = new CountSamples(W, H);
    for (int i = 0; i < W * H; i++) {
      image.counts()[i] = (short) Math.round(20_000 + i + 5 * random.nextGaussian());
    }
    return image;
  }

  private static Frame frame(CountSamples image) {
    Frame frame = new Frame(image);
    frame.begin(0, 0);
    return frame;
  }
}
