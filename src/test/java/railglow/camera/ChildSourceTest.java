package railglow.camera;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import railglow.observed.Frame;
import railglow.thermal.CountSamples;
import railglow.time.SystemClock;

class ChildSourceTest extends FrameSourceContract {
  @Override
  FrameSource thatGives(List<CountSamples> images) throws IOException {
    assumeTrue(Files.isExecutable(Path.of("/bin/cat")), "no /bin/cat here to play the camera");
    Path file = folder.resolve("frames raw");
    Files.write(file, stream(images));
    return open("exec:/bin/cat '" + file + "'", cameraWithCounter());
  }

  @Test
  void ffmpegsTestPictureComesWithItsSizeAndMoves() throws IOException {
    assumeTrue(Files.isExecutable(Path.of("/usr/bin/ffmpeg")), "no ffmpeg here");
    CameraDescriptor camera = camera(RawLayout.packed(64, 48, SampleType.U16, Endian.LITTLE));
    String command =
        "exec:ffmpeg -nostdin -loglevel error -f lavfi -i testsrc=size=64x48:rate=25"
            + " -frames:v 30 -f rawvideo -pix_fmt gray16le -";
    try (FrameSource source = open(command, camera)) {
      Frame frame = new Frame(source.newSamples());
      CountSamples first = new CountSamples(64, 48);
      int frames = 0;
      while (next(source, frame) == FrameSource.Outcome.FRAME) {
        if (frames == 0) {
          first.copyFrom(frame.samples());
        }
        frames++;
      }
      assertEquals(30, frames);
      int changed = 0;
      for (int i = 0; i < 64 * 48; i++) {
        changed += first.valueAt(i) == frame.samples().valueAt(i) ? 0 : 1;
      }
      assertTrue(changed > 10, changed + " pixels changed in 30 frames");
    }
  }

  @Test
  void halfAFrameAtTheEndIsSaidWithBothSizes() throws IOException {
    assumeTrue(Files.isExecutable(Path.of("/bin/sh")), "no /bin/sh here to play the camera");
    CameraDescriptor camera = camera(RawLayout.packed(4, 2, SampleType.U8, Endian.LITTLE));
    try (FrameSource source = open("exec:sh -c 'printf 0123456789'", camera)) {
      Frame frame = new Frame(source.newSamples());
      assertEquals(FrameSource.Outcome.FRAME, next(source, frame));
      IOException e = assertThrows(IOException.class, () -> next(source, frame));
      assertTrue(e.getMessage().contains("2 of 8 bytes in"), e.getMessage());
    }
  }

  @Test
  void anAddressOfNoKnownKindIsRefusedWithTheKnownOnes() {
    CameraDescriptor camera = cameraWithCounter();
    for (String address : List.of("usb:1", "tcp://host", "tcp://:80", "exec:", "exec:'a", "")) {
      IOException e = assertThrows(IOException.class, () -> open(address, camera));
      assertTrue(e.getMessage().startsWith("'" + address + "' is no address"), e.getMessage());
    }
  }

  private static FrameSource open(String address, CameraDescriptor camera) throws IOException {
    return FrameSources.open(address, camera, SystemClock.INSTANCE);
  }
}
