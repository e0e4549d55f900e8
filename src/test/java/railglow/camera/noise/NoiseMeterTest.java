package railglow.camera.noise;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.Random;
import org.junit.jupiter.api.Test;
import railglow.camera.RecordedFrames;
import railglow.camera.Recordings;
import railglow.observed.Frame;
import railglow.thermal.FloatSamples;

class NoiseMeterTest {
  private static final int W = 48;
  private static final int H = 36;
  private final Random random = new Random(21);

  @Test
  void whiteNoiseRowsColumnsAndTheWholeFrameAreToldApart() {
    NoiseMeter meter = new NoiseMeter(W, H, 25, PixelFaults.none(W, H));
    for (int n = 0; n < 800; n++) {
      meter.add(frame(together(0.010), together(0.020), 0.03 * random.nextGaussian()));
    }
    NoiseFigures figures = meter.figures();
    assertEquals(0.050, figures.temporal(), 0.002);
    assertEquals(0.050, figures.frameToFrame(), 0.002);
    assertEquals(0.010, figures.rowTogether(), 0.001);
    assertEquals(0.020, figures.columnTogether(), 0.002);
    assertEquals(0.030, figures.frameTogether(), 0.003);
    assertEquals(0, figures.nextFrameCorrelation(), 0.02);
    assertEquals(0, figures.horizontalCorrelation(), 0.05);
    // White noise: the deviation falls with the root of the averaging time.
    assertEquals(0.05 / Math.sqrt(16), figures.allanDeviationAt(16 / 25.0), 0.001);
  }

  @Test
  void smoothingInTimeShowsInTheNextFrame() {
    NoiseMeter meter = new NoiseMeter(W, H, 9, PixelFaults.none(W, H));
    float[] smooth = new float[W * H];
    for (int n = 0; n < 1500; n++) {
      FloatSamples image = new FloatSamples(W, H);
      for (int i = 0; i < smooth.length; i++) {
        smooth[i] += (float) (0.113 * (0.2 * random.nextGaussian() - smooth[i]));
        image.values()[i] = smooth[i];
      }
      if (n >= 100) {
        Frame frame = new Frame(image);
        frame.begin(n, 0);
        meter.add(frame);
      }
    }
    NoiseFigures figures = meter.figures();
    assertEquals(0.887, figures.nextFrameCorrelation(), 0.01);
    // A first-order recursive filter of weight w leaves sigma sqrt(w / (2 - w)).
    assertEquals(0.2 * Math.sqrt(0.113 / 1.887), figures.temporal(), 0.002);
    assertTrue(figures.frameToFrame() < 0.4 * figures.temporal());
  }

  /** The truth is stated beside the recording: 16 mK and 56 to 76 mK, one count about 20 mK. */
  @Test
  void aRealSmoothingCameraIsRecognised() throws IOException {
    try (RecordedFrames frames = Recordings.open("a_lepton3_static_489")) {
      NoiseMeter meter = new NoiseMeter(104, 58, 8.77, PixelFaults.none(104, 58));
      for (int n = 0; n < frames.count(); n++) {
        Frame frame = new Frame(frames.newSamples());
        frame.begin(n, 0);
        frames.read(n, frame.samples());
        meter.add(frame);
      }
      NoiseFigures figures = meter.figures().scaled(0.02);
      assertEquals(0.016, figures.frameToFrame(), 0.004);
      // The stated 56 to 76 mK hold what rows, columns and the frame do together as well.
      double whole =
          Math.hypot(
              Math.hypot(figures.temporal(), figures.frameTogether()),
              Math.hypot(figures.rowTogether(), figures.columnTogether()));
      assertEquals(0.066, whole, 0.012);
      assertEquals(0.88, figures.nextFrameCorrelation(), 0.1);
      assertTrue(figures.columnTogether() > figures.rowTogether());
    }
  }

  @Test
  void tooFewFramesGiveNoFigures() {
    NoiseMeter meter = new NoiseMeter(W, H, 25, PixelFaults.none(W, H));
    meter.add(frame(new double[H], new double[W], 0));
    assertEquals(1, meter.frames());
    assertThrows(IllegalStateException.class, meter::figures);
  }

  private double[] together(double kelvin) {
    double[] values = new double[Math.max(W, H)];
    for (int i = 0; i < values.length; i++) {
      values[i] = kelvin * random.nextGaussian();
    }
    return values;
  }

  private Frame frame(double[] rows, double[] columns, double all) {
    FloatSamples image = new FloatSamples(W, H);
    for (int i = 0; i < W * H; i++) {
      image.values()[i] =
          (float) (25 + 0.05 * random.nextGaussian() + rows[i / W] + columns[i % W] + all);
    }
    Frame frame = new Frame(image);
    frame.begin(0, 0);
    return frame;
  }
}
