package railglow.camera;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import railglow.config.CameraDescriptorFile;
import railglow.observed.Frame;
import railglow.time.SystemClock;

/** The shipped descriptors for cameras behind ffmpeg, with ffmpeg's own test picture as camera. */
class FfmpegCameraTest {
  private static final Path SHIPPED = Path.of("instruments");

  /** Each line is what the descriptor's own comment says, with the test picture as input. */
  @ParameterizedTest
  @CsvSource({
    "camera-v4l2-ffmpeg.yaml, 160x120, gray16le",
    "camera-generic-u16.yaml, 160x120, gray16le",
    "camera-picture-above-counts.yaml, 256x384, yuyv422",
  })
  void framesOfTheDescriptorsLayoutComeOneByOneUntilTheStreamEnds(
      String descriptor, String size, String format) throws Exception {
    assumeTrue(Files.isExecutable(Path.of("/usr/bin/ffmpeg")), "no ffmpeg here");
    CameraDescriptor camera = CameraDescriptorFile.read(SHIPPED.resolve(descriptor));
    String address =
        "exec:ffmpeg -nostdin -loglevel error -f lavfi -i testsrc2=size=%s:rate=25 -frames:v 5"
                .formatted(size)
            + " -f rawvideo -pix_fmt "
            + format
            + " -";
    Set<Integer> images = new HashSet<>();
    try (FrameSource source = FrameSources.open(address, camera, SystemClock.INSTANCE)) {
      Frame frame = new Frame(source.newSamples());
      assertEquals(camera.profile().width(), frame.samples().width());
      long number = 0;
      FrameSource.Outcome outcome = FrameSource.Outcome.NOTHING_YET;
      while (outcome != FrameSource.Outcome.ENDED) {
        outcome = source.read(frame, 1_000_000_000L);
        if (outcome == FrameSource.Outcome.FRAME) {
          assertEquals(number++, frame.number());
          images.add(contentOf(frame));
        }
      }
      assertEquals(5, number);
    }
    assertTrue(images.size() > 1, "the picture moves");
  }

  @Test
  void theLineForACameraIsOneThatFfmpegUnderstandsUpToTheMissingDevice() throws Exception {
    assumeTrue(Files.isExecutable(Path.of("/usr/bin/ffmpeg")), "no ffmpeg here");
    Path file = SHIPPED.resolve("camera-v4l2-ffmpeg.yaml");
    Matcher line =
        Pattern.compile("address: \"(exec:[^\"]*v4l2[^\"]*)\"").matcher(Files.readString(file));
    assertTrue(line.find());
    String address = line.group(1).replace("/dev/video0", "/dev/no-such-camera");
    CameraDescriptor camera = CameraDescriptorFile.read(file);
    try (FrameSource source = FrameSources.open(address, camera, SystemClock.INSTANCE)) {
      Frame frame = new Frame(source.newSamples());
      String complaint = "";
      for (int i = 0; i < 20 && complaint.isEmpty(); i++) {
        try {
          source.read(frame, 1_000_000_000L);
        } catch (java.io.IOException e) {
          complaint = e.getMessage();
        }
      }
      assertTrue(complaint.contains("/dev/no-such-camera: No such file"), complaint);
      assertFalse(complaint.contains("Unrecognized option"), complaint);
    }
  }

  private static int contentOf(Frame frame) {
    int hash = 7;
    for (int i = 0; i < frame.samples().width() * frame.samples().height(); i++) {
      hash = 31 * hash + (int) frame.samples().valueAt(i);
    }
    return hash;
  }
}
