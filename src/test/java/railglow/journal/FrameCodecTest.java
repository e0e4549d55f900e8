package railglow.journal;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;
import railglow.thermal.CountSamples;
import railglow.thermal.FloatSamples;

class FrameCodecTest {
  private static ByteBuffer buffer(FrameCodec codec) {
    return ByteBuffer.allocate(codec.maxBytes()).order(ByteOrder.LITTLE_ENDIAN);
  }

  @Property(tries = 300, seed = "10")
  void anyCountsComeBack(
      @ForAll @IntRange(min = 1, max = 33) int width,
      @ForAll @IntRange(min = 1, max = 5) int height,
      @ForAll @IntRange(min = 0, max = 16) int noiseBits,
      @ForAll long seed)
      throws JournalException {
    Random random = new Random(seed);
    RiceCodec writer = new RiceCodec(width, height);
    RiceCodec reader = new RiceCodec(width, height);
    CountSamples frame = new CountSamples(width, height);
    CountSamples back = new CountSamples(width, height);
    for (int f = 0; f < 6; f++) {
      for (int i = 0; i < frame.counts().length; i++) {
        frame.counts()[i] = (short) (60_000 + 100 * i + random.nextInt(1 << noiseBits));
      }
      boolean independent = f % 4 == 0;
      ByteBuffer bytes = buffer(writer);
      writer.encode(frame, independent, bytes);
      reader.decode(bytes.flip(), independent, back);
      assertArrayEquals(frame.counts(), back.counts());
    }
  }

  @Property(tries = 200, seed = "11")
  void anyFloatBitsComeBack(@ForAll @Size(24) int[] bits, @ForAll boolean independent)
      throws JournalException {
    DeflateCodec writer = new DeflateCodec(4, 3);
    DeflateCodec reader = new DeflateCodec(4, 3);
    for (int f = 0; f < 2; f++) {
      FloatSamples frame = new FloatSamples(4, 3);
      for (int i = 0; i < 12; i++) {
        frame.values()[i] = Float.intBitsToFloat(bits[12 * f + i]);
      }
      ByteBuffer bytes = buffer(writer);
      writer.encode(frame, independent, bytes);
      FloatSamples back = new FloatSamples(4, 3);
      reader.decode(bytes.flip(), independent, back);
      for (int i = 0; i < 12; i++) {
        assertTrue(
            Float.floatToRawIntBits(frame.values()[i])
                == Float.floatToRawIntBits(back.values()[i]));
      }
    }
  }

  @Property(tries = 2000, seed = "12")
  void anyBytesAreAFrameOrARefusal(
      @ForAll @Size(max = 60) byte[] bytes, @ForAll boolean independent) {
    for (FrameCodec codec : new FrameCodec[] {new RiceCodec(5, 4), new DeflateCodec(5, 4)}) {
      try {
        codec.decode(
            ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN),
            independent,
            codec instanceof RiceCodec ? new CountSamples(5, 4) : new FloatSamples(5, 4));
      } catch (JournalException e) {
        assertTrue(!e.getMessage().isEmpty());
      }
    }
  }

  /**
   * The entropy of a normal distribution of sigma 5 rounded to whole numbers is log2(5 sqrt(2 pi
   * e)) = 4.369 bits (Cover and Thomas, Elements of Information Theory, theorem 8.3.1 and example
   * 8.1.2); the code must come within a third of a bit of it.
   */
  @Test
  void cameraNoiseTakesLittleMoreThanItsEntropy() {
    int width = 160;
    int height = 120;
    RiceCodec codec = new RiceCodec(width, height);
    CountSamples frame = new CountSamples(width, height);
    Random random = new Random(1);
    long bytes = 0;
    for (int f = 0; f < 40; f++) {
      for (int i = 0; i < frame.counts().length; i++) {
        frame.counts()[i] = (short) Math.round(29_800 + i % 97 + 5 * random.nextGaussian());
      }
      ByteBuffer out = buffer(codec);
      codec.encode(frame, f == 0, out);
      bytes += f < 16 ? 0 : out.position();
    }
    double bitsPerPixel = 8.0 * bytes / (24 * width * height);
    assertTrue(bitsPerPixel > 4.369 && bitsPerPixel < 4.369 + 0.33, bitsPerPixel + " bits");
  }
}
