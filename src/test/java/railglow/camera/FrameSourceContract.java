package railglow.camera;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import railglow.observed.Frame;
import railglow.thermal.CountSamples;
import railglow.thermal.Samples;

/** What every source of frames must do. */
abstract class FrameSourceContract {
  static final int WIDTH = 5;
  static final int HEIGHT = 3;
  private static final long SECOND = 1_000_000_000;
  @TempDir Path folder;

  /** A source that gives these images, 5 x 3 counts each, and ends. */
  abstract FrameSource thatGives(List<CountSamples> images) throws Exception;

  @Test
  void everyImageComesOnceInOrderWithItsNumberAndAnArrivalThatNeverGoesBack() throws Exception {
    List<CountSamples> sent = images(7);
    try (FrameSource source = thatGives(sent)) {
      Frame frame = new Frame(source.newSamples());
      long lastArrival = Long.MIN_VALUE;
      for (int n = 0; n < sent.size(); n++) {
        assertEquals(FrameSource.Outcome.FRAME, next(source, frame));
        assertEquals(n, frame.number());
        assertTrue(frame.marks().isEmpty());
        assertTrue(frame.arrivalNanos() >= lastArrival);
        lastArrival = frame.arrivalNanos();
        for (int i = 0; i < WIDTH * HEIGHT; i++) {
          assertEquals(sent.get(n).valueAt(i), frame.samples().valueAt(i));
        }
      }
      assertEquals(FrameSource.Outcome.ENDED, next(source, frame));
      assertEquals(FrameSource.Outcome.ENDED, next(source, frame));
    }
  }

  @Test
  void aFreshImageHasTheSizeOfTheCamera() throws Exception {
    try (FrameSource source = thatGives(images(1))) {
      Samples image = source.newSamples();
      assertEquals(WIDTH, image.width());
      assertEquals(HEIGHT, image.height());
      assertFalse(source.description().isBlank());
    }
  }

  @Test
  void closingInTheMiddleIsQuick() throws Exception {
    FrameSource source = thatGives(images(7));
    next(source, new Frame(source.newSamples()));
    assertTimeoutPreemptively(Duration.ofSeconds(5), source::close);
  }

  static FrameSource.Outcome next(FrameSource source, Frame frame) throws IOException {
    FrameSource.Outcome outcome = source.read(frame, SECOND);
    for (int tries = 0; tries < 20 && outcome == FrameSource.Outcome.NOTHING_YET; tries++) {
      outcome = source.read(frame, SECOND);
    }
    return outcome;
  }

  static List<CountSamples> images(int count) {
    List<CountSamples> images = new ArrayList<>();
    for (int n = 0; n < count; n++) {
      CountSamples image = new CountSamples(WIDTH, HEIGHT);
      for (int i = 0; i < WIDTH * HEIGHT; i++) {
        image.counts()[i] = (short) (1000 * n + 37 * i + 29_000);
      }
      images.add(image);
    }
    return images;
  }

  static CameraDescriptor camera(RawLayout layout) {
    return new CameraDescriptor(
        "test camera",
        layout,
        CountScale.linear(0.01, -273.15),
        25,
        0.05,
        0.04,
        0.01,
        Double.POSITIVE_INFINITY,
        1);
  }

  /** With the header of the simulated camera: frame counter, zero, time in microseconds. */
  static CameraDescriptor cameraWithCounter() {
    return camera(
        RawLayout.packed(WIDTH, HEIGHT, SampleType.U16, Endian.LITTLE).withHeader(16, counter()));
  }

  /** Four bytes at the very beginning. */
  static Telemetry counter() {
    return new Telemetry(
        Optional.of(new TelemetryField(0, 4, Endian.LITTLE)),
        1,
        Optional.empty(),
        Double.NaN,
        Optional.empty());
  }

  /** The images as that camera streams them. */
  static byte[] stream(List<CountSamples> images) {
    int frameBytes = 16 + 2 * WIDTH * HEIGHT;
    ByteBuffer bytes =
        ByteBuffer.allocate(images.size() * frameBytes).order(ByteOrder.LITTLE_ENDIAN);
    for (int n = 0; n < images.size(); n++) {
      bytes.putInt(n).putInt(0).putLong(40_000L * n);
      for (short count : images.get(n).counts()) {
        bytes.putShort(count);
      }
    }
    return bytes.array();
  }
}
