package railglow.camera;

import com.code_intelligence.jazzer.junit.FuzzTest;
import java.io.IOException;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.provider.MethodSource;
import railglow.fuzz.Documented;
import railglow.link.IncomingBytes;
import railglow.observed.Frame;
import railglow.thermal.CountSamples;
import railglow.time.InventedClock;

/** A camera stream of any bytes, with and without a mark to find its place by. */
@Tag("fuzz")
public class RawStreamFuzz {
  public static Stream<byte[]> seeds() {
    return Stream.of(
        FrameSourceContract.stream(List.of(new CountSamples(5, 3), new CountSamples(5, 3))));
  }

  @MethodSource("seeds")
  @FuzzTest(maxDuration = "20s")
  void streams(byte[] bytes) {
    check(bytes);
  }

  public static void check(byte[] bytes) {
    Documented.only(() -> readAll(bytes), IOException.class);
  }

  private static void readAll(byte[] bytes) throws IOException {
    CameraDescriptor camera = FrameSourceContract.cameraWithCounter();
    InventedClock clock = new InventedClock(0);
    try (RawStreamSource source = new RawStreamSource(pieces(bytes, clock), camera, clock)) {
      Frame frame = new Frame(source.newSamples());
      int calls = 0;
      while (source.read(frame, 1_000_000) != FrameSource.Outcome.ENDED) {
        if (++calls > bytes.length + 10) {
          throw new AssertionError("the stream has ended and the source has not");
        }
      }
    }
  }

  /** The bytes in pieces of seven, then the end. */
  private static IncomingBytes pieces(byte[] bytes, InventedClock clock) {
    return new IncomingBytes() {
      private int at;

      @Override
      public String description() {
        return "bytes";
      }

      @Override
      public int read(byte[] into, int offset, int length, long timeoutNanos) {
        int count = Math.min(Math.min(7, length), bytes.length - at);
        clock.advance(100_000);
        if (count <= 0) {
          return ENDED;
        }
        System.arraycopy(bytes, at, into, offset, count);
        at += count;
        return count;
      }

      @Override
      public void close() {
        at = bytes.length;
      }
    };
  }
}
