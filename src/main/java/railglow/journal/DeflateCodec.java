package railglow.journal;

import java.nio.ByteBuffer;
import java.util.zip.DataFormatException;
import java.util.zip.Deflater;
import java.util.zip.Inflater;
import railglow.thermal.FloatSamples;
import railglow.thermal.Samples;

/**
 * Floats as the exclusive-or of their bits with those of the frame before (of nothing in an
 * independent frame), most significant bytes of all pixels first, then the next three, in one zlib
 * stream (RFC 1950). A frame that would grow so is a 0 byte and the plain little-endian floats; the
 * others start with a 1 byte.
 */
final class DeflateCodec implements FrameCodec {
  static final String WORD = "xor-deflate";
  private static final int LEVEL = 1;

  private final int[] before;
  private final byte[] planes;
  private final byte[] packed;

  DeflateCodec(int width, int height) {
    before = new int[Math.multiplyExact(width, height)];
    planes = new byte[Math.multiplyExact(before.length, 4)];
    packed = new byte[planes.length];
  }

  @Override
  public String word() {
    return WORD;
  }

  @Override
  public int maxBytes() {
    return planes.length + 1;
  }

  @Override
  public void encode(Samples frame, boolean independent, ByteBuffer out) {
    float[] values = ((FloatSamples) frame).values();
    int pixels = before.length;
    for (int i = 0; i < pixels; i++) {
      int bits = Float.floatToRawIntBits(values[i]);
      int mixed = independent ? bits : bits ^ before[i];
      before[i] = bits;
      planes[i] = (byte) (mixed >>> 24);
      planes[pixels + i] = (byte) (mixed >>> 16);
      planes[2 * pixels + i] = (byte) (mixed >>> 8);
      planes[3 * pixels + i] = (byte) mixed;
    }
    Deflater deflater = new Deflater(LEVEL);
    deflater.setInput(planes);
    deflater.finish();
    int length = deflater.deflate(packed);
    boolean fits = deflater.finished() && length < planes.length;
    deflater.end();
    out.put((byte) (fits ? 1 : 0));
    if (fits) {
      out.put(packed, 0, length);
    } else {
      for (int bits : before) {
        out.putInt(bits);
      }
    }
  }

  @Override
  public void decode(ByteBuffer in, boolean independent, Samples frame) throws JournalException {
    if (!in.hasRemaining()) {
      throw new JournalException("a frame without bytes");
    }
    if (in.get() == 0) {
      if (in.remaining() != planes.length) {
        throw new JournalException(in.remaining() + " bytes where " + planes.length + " are due");
      }
      for (int i = 0; i < before.length; i++) {
        before[i] = in.getInt();
      }
    } else {
      inflate(in);
      int pixels = before.length;
      for (int i = 0; i < pixels; i++) {
        int mixed =
            planes[i] << 24
                | (planes[pixels + i] & 0xFF) << 16
                | (planes[2 * pixels + i] & 0xFF) << 8
                | planes[3 * pixels + i] & 0xFF;
        before[i] = independent ? mixed : mixed ^ before[i];
      }
    }
    float[] values = ((FloatSamples) frame).values();
    for (int i = 0; i < before.length; i++) {
      values[i] = Float.intBitsToFloat(before[i]);
    }
  }

  private void inflate(ByteBuffer in) throws JournalException {
    Inflater inflater = new Inflater();
    try {
      inflater.setInput(in);
      int length = inflater.inflate(planes);
      if (length != planes.length || !inflater.finished()) {
        throw new JournalException("the packed bytes are not those of a whole frame");
      }
    } catch (DataFormatException e) {
      throw new JournalException("the packed bytes can't be unpacked: " + e.getMessage(), e);
    } finally {
      inflater.end();
    }
  }
}
