package railglow.journal;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.FileChannel;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Locale;
import java.util.zip.CRC32C;
import railglow.observed.Frame;

/**
 * Stores frames one after the other, without loss, with their number, arrival and marks. The file
 * is one line of JSON (size, sample type, codec), then for each frame a {@link ChunkHeader} and its
 * pixels; each frame is with the operating system before {@link #append} returns. Not thread-safe:
 * the scribe owns it.
 */
public final class FrameStoreWriter implements AutoCloseable {
  /** One frame in so many leans on no other, so that damage ends there. */
  private static final int INDEPENDENT_EVERY = 64;

  private final FileChannel channel;
  private final FrameCodec codec;
  private final ByteBuffer buffer;

  /** The same bytes, for check sums. */
  private final ByteBuffer summed;

  private final CRC32C crc = new CRC32C();
  private final SampleType type;
  private final int width;
  private final int height;
  private long frames;
  private long bytes;

  private FrameStoreWriter(
      FileChannel channel, FrameCodec codec, SampleType type, int width, int height) {
    this.channel = channel;
    this.codec = codec;
    this.type = type;
    this.width = width;
    this.height = height;
    this.buffer =
        ByteBuffer.allocateDirect(ChunkHeader.BYTES + codec.maxBytes())
            .order(ByteOrder.LITTLE_ENDIAN);
    this.summed = buffer.duplicate();
  }

  /**
   * Starts a new file.
   *
   * @throws JournalException when there is one already
   */
  public static FrameStoreWriter create(Path file, SampleType type, int width, int height)
      throws IOException {
    return create(file, type, width, height, FrameCodec.best(type));
  }

  static FrameStoreWriter create(Path file, SampleType type, int width, int height, String codec)
      throws IOException {
    FrameCodec chosen = FrameCodec.named(codec, type, width, height);
    FileChannel channel;
    try {
      channel = FileChannel.open(file, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
    } catch (FileAlreadyExistsException e) {
      throw new JournalException(file + " is there already; frames are never written over", e);
    }
    FrameStoreWriter writer = new FrameStoreWriter(channel, chosen, type, width, height);
    ObjectNode header =
        JournalJson.MAPPER
            .createObjectNode()
            .put("kind", "frames")
            .put("formatVersion", RunHeader.CURRENT_FORMAT)
            .put("width", width)
            .put("height", height)
            .put("sampleType", type.word())
            .put("codec", chosen.word());
    try {
      writer.write(ByteBuffer.wrap(JournalLine.of(0, header)));
      return writer;
    } catch (IOException | RuntimeException e) {
      channel.close();
      throw e;
    }
  }

  /** The most bytes that so many frames can take in a file, whatever is in them. */
  public static long plannedBytes(SampleType type, int width, int height, long frames) {
    return 4096 + frames * (ChunkHeader.BYTES + 16 + height + (long) width * height * type.bytes());
  }

  /**
   * Adds a frame; it is not changed and may be reused afterwards.
   *
   * @throws IOException when the disk does not take it; the run must then stop
   */
  public void append(Frame frame) throws IOException {
    if (frame.samples().width() != width
        || frame.samples().height() != height
        || SampleType.of(frame.samples()) != type) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "a %s frame of %d x %d can't be stored among %s frames of %d x %d",
              SampleType.of(frame.samples()).word(),
              frame.samples().width(),
              frame.samples().height(),
              type.word(),
              width,
              height));
    }
    boolean independent = frames % INDEPENDENT_EVERY == 0;
    buffer.clear().position(ChunkHeader.BYTES);
    codec.encode(frame.samples(), independent, buffer);
    int payload = buffer.position() - ChunkHeader.BYTES;
    chunk(
        payload,
        frame.number(),
        frame.arrivalNanos(),
        ChunkHeader.bits(frame.marks()),
        independent ? ChunkHeader.INDEPENDENT : ChunkHeader.LEANING);
    frames++;
  }

  public long frames() {
    return frames;
  }

  /** Bytes written so far. */
  public long bytes() {
    return bytes;
  }

  /** Waits until everything appended is on the disk itself. */
  public void force() throws IOException {
    channel.force(false);
  }

  /** Writes the mark of the end, forces and closes the file. Closing twice does nothing. */
  @Override
  public void close() throws IOException {
    if (!channel.isOpen()) {
      return;
    }
    try {
      chunk(0, 0, 0, 0, ChunkHeader.END);
      channel.force(true);
    } finally {
      channel.close();
    }
  }

  /** Writes a header and the payload that stands behind it in the buffer. */
  private void chunk(int payload, long number, long arrivalNanos, int marks, int kind)
      throws IOException {
    int payloadCrc = payload == 0 ? 0 : crc(ChunkHeader.BYTES, payload);
    ChunkHeader.put(buffer, payload, number, arrivalNanos, frames, marks, kind, payloadCrc);
    buffer.putInt(ChunkHeader.OWN_CRC, crc(0, ChunkHeader.OWN_CRC));
    buffer.position(0).limit(ChunkHeader.BYTES + payload);
    write(buffer);
  }

  private int crc(int index, int length) {
    summed.limit(index + length).position(index);
    crc.reset();
    crc.update(summed);
    return (int) crc.getValue();
  }

  private void write(ByteBuffer from) throws IOException {
    while (from.hasRemaining()) {
      bytes += channel.write(from);
    }
  }
}
