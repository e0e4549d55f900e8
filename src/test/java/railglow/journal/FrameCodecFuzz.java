package railglow.journal;

import com.code_intelligence.jazzer.junit.FuzzTest;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.Arrays;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.provider.MethodSource;
import railglow.fuzz.Documented;
import railglow.thermal.CountSamples;
import railglow.thermal.Samples;

/** Pixels of stored frames in every code. What can be read is written and read again. */
@Tag("fuzz")
public class FrameCodecFuzz {
  private static final int WIDTH = 5;
  private static final int HEIGHT = 3;

  public static Stream<byte[]> seeds() {
    return Stream.of(
        seed(0, SampleType.UINT16), seed(1, SampleType.UINT16), seed(2, SampleType.FLOAT32));
  }

  @MethodSource("seeds")
  @FuzzTest(maxDuration = "20s")
  void pixels(byte[] bytes) {
    check(bytes);
  }

  public static void check(byte[] bytes) {
    if (bytes.length > 0) {
      Documented.only(() -> decodeTwo(bytes), JournalException.class);
    }
  }

  private static FrameCodec codec(int choice) throws JournalException {
    return switch (Math.floorMod(choice, 3)) {
      case 0 -> FrameCodec.named(RawCodec.WORD, SampleType.UINT16, WIDTH, HEIGHT);
      case 1 -> FrameCodec.named(RiceCodec.WORD, SampleType.UINT16, WIDTH, HEIGHT);
      default -> FrameCodec.named(DeflateCodec.WORD, SampleType.FLOAT32, WIDTH, HEIGHT);
    };
  }

  /** An independent frame from the first half, and one that leans on it from the second. */
  private static void decodeTwo(byte[] bytes) throws JournalException {
    SampleType type = Math.floorMod(bytes[0], 3) < 2 ? SampleType.UINT16 : SampleType.FLOAT32;
    FrameCodec reader = codec(bytes[0]);
    FrameCodec writer = codec(bytes[0]);
    FrameCodec again = codec(bytes[0]);
    int middle = 1 + (bytes.length - 1) / 2;
    for (boolean independent : new boolean[] {true, false}) {
      byte[] part =
          independent
              ? Arrays.copyOfRange(bytes, 1, middle)
              : Arrays.copyOfRange(bytes, middle, bytes.length);
      Samples read = type.newSamples(WIDTH, HEIGHT);
      reader.decode(ByteBuffer.wrap(part).order(ByteOrder.LITTLE_ENDIAN), independent, read);
      ByteBuffer written = ByteBuffer.allocate(writer.maxBytes()).order(ByteOrder.LITTLE_ENDIAN);
      writer.encode(read, independent, written);
      Samples reread = type.newSamples(WIDTH, HEIGHT);
      again.decode(written.flip(), independent, reread);
      for (int i = 0; i < WIDTH * HEIGHT; i++) {
        if (Double.doubleToLongBits(read.valueAt(i))
            != Double.doubleToLongBits(reread.valueAt(i))) {
          throw new AssertionError("pixel " + i + " changed when written and read again");
        }
      }
    }
  }

  private static byte[] seed(int choice, SampleType type) {
    try {
      FrameCodec codec = codec(choice);
      ByteBuffer out = ByteBuffer.allocate(1 + 2 * codec.maxBytes()).order(ByteOrder.LITTLE_ENDIAN);
      out.put((byte) choice);
      Samples samples = type.newSamples(WIDTH, HEIGHT);
      if (samples instanceof CountSamples counts) {
        for (int i = 0; i < WIDTH * HEIGHT; i++) {
          counts.counts()[i] = (short) (29_000 + 7 * i % 11);
        }
      }
      codec.encode(samples, true, out);
      codec.encode(samples, false, out);
      return Arrays.copyOf(out.array(), out.position());
    } catch (JournalException e) {
      throw new AssertionError(e);
    }
  }
}
