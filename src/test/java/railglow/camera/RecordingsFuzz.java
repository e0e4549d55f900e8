package railglow.camera;

import com.code_intelligence.jazzer.junit.FuzzTest;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.provider.MethodSource;
import railglow.fuzz.Documented;
import railglow.thermal.Samples;

/** Recorded frames in files of other programs: NPY, TIFF and raw. */
@Tag("fuzz")
public class RecordingsFuzz {
  public static Stream<byte[]> seeds() {
    return Stream.of(npy("<u2", "(2, 3, 4)", 48), npy(">f4", "(3, 4)", 48), tiff());
  }

  @MethodSource("seeds")
  @FuzzTest(maxDuration = "20s")
  void recordings(byte[] bytes) {
    check(bytes);
  }

  public static void check(byte[] bytes) {
    for (String name : List.of("frames.npy", "frames.tiff", "frames.raw")) {
      Path file = Documented.file(name, bytes);
      Documented.only(() -> readAll(file), IOException.class);
    }
  }

  private static void readAll(Path file) throws IOException {
    try (RecordedFrames frames = FrameSources.openFile(file.toString(), camera())) {
      Samples image = frames.newSamples();
      for (int i = 0; i < Math.min(frames.count(), 50); i++) {
        frames.read(i, image);
      }
    }
  }

  private static CameraDescriptor camera() {
    return FrameSourceContract.camera(RawLayout.packed(4, 3, SampleType.U16, Endian.LITTLE));
  }

  private static byte[] npy(String type, String shape, int data) {
    String head = "{'descr': '" + type + "', 'fortran_order': False, 'shape': " + shape + ", }";
    head = head + " ".repeat(64 - (10 + head.length() + 1) % 64) + "\n";
    byte[] start =
        ("\u0093NUMPY\1\0" + (char) head.length() + "\0" + head)
            .getBytes(StandardCharsets.ISO_8859_1);
    return java.util.Arrays.copyOf(start, start.length + data);
  }

  private static byte[] tiff() {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try {
      ImageIO.write(new BufferedImage(4, 3, BufferedImage.TYPE_USHORT_GRAY), "tiff", out);
    } catch (IOException e) {
      throw new AssertionError(e);
    }
    return out.toByteArray();
  }
}
