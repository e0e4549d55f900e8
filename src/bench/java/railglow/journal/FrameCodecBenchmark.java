package railglow.journal;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import railglow.thermal.CountSamples;

/** A frame with noise of 5 counts into Rice code and back. */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(value = 2, jvmArgs = {"-Xmx256m", "-XX:+UseSerialGC"})
public class FrameCodecBenchmark {
  private static final int IMAGES = 8;

  @Param({"256x192", "640x512"})
  public String size;

  private final CountSamples[] images = new CountSamples[IMAGES];
  private final ByteBuffer[] stored = new ByteBuffer[IMAGES];
  private RiceCodec writer;
  private RiceCodec reader;
  private ByteBuffer out;
  private CountSamples back;
  private int written;
  private int read;

  @Setup
  public void prepare() {
    int width = Integer.parseInt(size.split("x")[0]);
    int height = Integer.parseInt(size.split("x")[1]);
    Random noise = new Random(1);
    for (int f = 0; f < IMAGES; f++) {
      images[f] = new CountSamples(width, height);
      for (int i = 0; i < width * height; i++) {
        images[f].counts()[i] = (short) Math.round(29_000 + i % width * 0.2 + 5 * noise.nextGaussian());
      }
    }
    RiceCodec once = new RiceCodec(width, height);
    for (int f = 0; f < IMAGES; f++) {
      stored[f] = ByteBuffer.allocate(once.maxBytes()).order(ByteOrder.LITTLE_ENDIAN);
      once.encode(images[f], f == 0, stored[f]);
      stored[f].flip();
    }
    writer = new RiceCodec(width, height);
    reader = new RiceCodec(width, height);
    out = ByteBuffer.allocateDirect(writer.maxBytes()).order(ByteOrder.LITTLE_ENDIAN);
    back = new CountSamples(width, height);
  }

  @Benchmark
  public ByteBuffer frameIntoCode() {
    out.clear();
    writer.encode(images[written % IMAGES], written % 64 == 0, out);
    written++;
    return out;
  }

  @Benchmark
  public CountSamples frameFromCode() throws JournalException {
    reader.decode(stored[read].rewind(), read == 0, back);
    read = (read + 1) % IMAGES;
    return back;
  }
}
