package railglow.journal;

import com.code_intelligence.jazzer.junit.FuzzTest;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.provider.MethodSource;
import railglow.fuzz.Documented;
import railglow.observed.Frame;
import railglow.thermal.CountSamples;
import railglow.thermal.Samples;

/** Stored frames, whole, damaged or cut anywhere. */
@Tag("fuzz")
public class FrameStoreFuzz {
  public static Stream<byte[]> seeds() {
    return Stream.of(sample());
  }

  @MethodSource("seeds")
  @FuzzTest(maxDuration = "20s")
  void frames(byte[] bytes) {
    check(bytes);
  }

  public static void check(byte[] bytes) {
    Path file = Documented.file("frames.rgf", bytes);
    Documented.only(() -> readAll(file, bytes.length), JournalException.class);
  }

  static void readAll(Path file, int size) throws IOException {
    try (FrameStoreReader reader = FrameStoreReader.open(file)) {
      Frame frame = new Frame(reader.newSamples());
      int frames = 0;
      while (reader.next(frame)) {
        if (++frames > size) {
          throw new AssertionError("more frames than bytes");
        }
      }
    }
  }

  static byte[] sample() {
    Path file = Documented.file("seed-frames.rgf", new byte[0]);
    try {
      Files.delete(file);
      try (FrameStoreWriter writer = FrameStoreWriter.create(file, SampleType.UINT16, 3, 2)) {
        for (int i = 0; i < 3; i++) {
          Samples samples = new CountSamples(3, 2);
          writer.append(new Frame(samples));
        }
      }
      return Files.readAllBytes(file);
    } catch (IOException e) {
      throw new AssertionError(e);
    }
  }
}
