package railglow.journal;

import java.nio.ByteBuffer;
import railglow.thermal.Samples;

/**
 * How the pixels of one frame become bytes and back, without loss: every bit of every pixel
 * returns. A codec may lean on the frames it has seen before; an independent frame leans on none
 * and starts such a memory anew. One instance serves one writer or one reader. Not thread-safe.
 */
interface FrameCodec {
  /** Its word in the file's header. */
  String word();

  /** The most bytes one frame can take. */
  int maxBytes();

  /**
   * Writes a frame at the buffer's position.
   *
   * @param independent whether the frame must be readable without those before it
   * @param out little-endian, with at least {@link #maxBytes} left
   */
  void encode(Samples frame, boolean independent, ByteBuffer out);

  /**
   * Reads what {@link #encode} wrote.
   *
   * @param in little-endian, exactly the bytes of the frame
   * @throws JournalException when these can't be the bytes of a frame
   */
  void decode(ByteBuffer in, boolean independent, Samples frame) throws JournalException;

  /** The word of the codec that new files get. */
  static String best(SampleType type) {
    return type == SampleType.UINT16 ? RiceCodec.WORD : DeflateCodec.WORD;
  }

  /**
   * The codec with this word.
   *
   * @throws JournalException when this program has none
   */
  static FrameCodec named(String word, SampleType type, int width, int height)
      throws JournalException {
    if (word.equals(RawCodec.WORD)) {
      return new RawCodec(type, width, height);
    }
    if (word.equals(RiceCodec.WORD) && type == SampleType.UINT16) {
      return new RiceCodec(width, height);
    }
    if (word.equals(DeflateCodec.WORD) && type == SampleType.FLOAT32) {
      return new DeflateCodec(width, height);
    }
    throw new JournalException(
        "the frames are stored as '" + word + "', which this program can't read: use a newer one");
  }
}
