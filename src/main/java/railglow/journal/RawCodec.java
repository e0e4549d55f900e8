package railglow.journal;

import java.nio.ByteBuffer;
import railglow.thermal.CountSamples;
import railglow.thermal.FloatSamples;
import railglow.thermal.Samples;

/** Pixels as they are, row by row. */
final class RawCodec implements FrameCodec {
  static final String WORD = "raw";

  private final int bytes;

  RawCodec(SampleType type, int width, int height) {
    bytes = Math.multiplyExact(Math.multiplyExact(width, height), type.bytes());
  }

  @Override
  public String word() {
    return WORD;
  }

  @Override
  public int maxBytes() {
    return bytes;
  }

  @Override
  public void encode(Samples frame, boolean independent, ByteBuffer out) {
    if (frame instanceof CountSamples counts) {
      out.asShortBuffer().put(counts.counts());
    } else {
      out.asFloatBuffer().put(((FloatSamples) frame).values());
    }
    out.position(out.position() + bytes);
  }

  @Override
  public void decode(ByteBuffer in, boolean independent, Samples frame) throws JournalException {
    if (in.remaining() != bytes) {
      throw new JournalException(in.remaining() + " bytes of pixels where " + bytes + " are due");
    }
    if (frame instanceof CountSamples counts) {
      in.asShortBuffer().get(counts.counts());
    } else {
      in.asFloatBuffer().get(((FloatSamples) frame).values());
    }
  }
}
