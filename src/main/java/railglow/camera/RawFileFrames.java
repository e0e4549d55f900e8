package railglow.camera;

import java.io.BufferedInputStream;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.ShortBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import railglow.thermal.CountSamples;
import railglow.thermal.Samples;

/**
 * Frames one after the other in a file: raw frames of any layout, or an NPY array. Each is read
 * into one buffer that is used again, which is faster than mapping the file (decision 0092); plain
 * counts go from there to the image as they are. Not thread-safe.
 */
public final class RawFileFrames implements RecordedFrames {
  private final Path path;
  private final FrameDecoder decoder;
  private final FileChannel file;
  private final long offset;
  private final int count;
  private final ByteBuffer buffer;
  private final ShortBuffer counts;
  private final byte[] bytes;

  private RawFileFrames(Path path, FrameDecoder decoder, long offset, int count)
      throws IOException {
    this.path = path;
    this.decoder = decoder;
    this.offset = offset;
    this.count = count;
    this.buffer =
        ByteBuffer.allocateDirect(decoder.layout().frameBytes()).order(ByteOrder.LITTLE_ENDIAN);
    this.counts = decoder.isPlainCounts() ? plainCounts() : null;
    this.bytes = counts == null ? new byte[buffer.capacity()] : null;
    this.file = FileChannel.open(path, StandardOpenOption.READ);
  }

  /**
   * Opens a file of raw frames.
   *
   * @throws IOException with one sentence when it is absent or does not hold whole frames
   */
  public static RawFileFrames openRaw(Path path, RawLayout layout, CountScale scale)
      throws IOException {
    long size = size(path);
    int frameBytes = layout.frameBytes();
    if (size == 0 || size % frameBytes != 0) {
      throw new IOException(
          path
              + " has "
              + size
              + " bytes, not a whole number of frames of "
              + frameBytes
              + "; compare the layout in the camera's descriptor with the file");
    }
    return new RawFileFrames(
        path, new FrameDecoder(layout, scale), 0, Math.toIntExact(size / frameBytes));
  }

  /**
   * Opens an NPY file; its own head gives size and type, the orientation is the layout's.
   *
   * @throws IOException with one sentence when it is absent or not such a file
   */
  public static RawFileFrames openNpy(Path path, Orientation orientation, CountScale scale)
      throws IOException {
    long size = size(path);
    NpyHeader header;
    try (InputStream input = new BufferedInputStream(Files.newInputStream(path))) {
      header = NpyHeader.read(input);
    } catch (IOException e) {
      throw new IOException(path + " can't be used: " + e.getMessage(), e);
    }
    RawLayout layout;
    try {
      layout =
          RawLayout.packed(header.columns(), header.rows(), header.sample(), header.endian())
              .withOrientation(orientation);
    } catch (ArithmeticException | IllegalArgumentException e) {
      throw new IOException(path + " can't be used: " + e.getMessage(), e);
    }
    long whole = (long) header.frames() * layout.frameBytes();
    if (size - header.dataOffset() < whole) {
      throw new IOException(
          path
              + " is cut short: its head promises "
              + header.frames()
              + " frames, "
              + whole
              + " bytes, and "
              + (size - header.dataOffset())
              + " are there");
    }
    CountScale usable = header.sample() == SampleType.F32 ? linearPart(scale) : scale;
    return new RawFileFrames(
        path, new FrameDecoder(layout, usable), header.dataOffset(), header.frames());
  }

  @Override
  public String description() {
    return path.toString();
  }

  @Override
  public int count() {
    return count;
  }

  /** How the frames stand in the file. */
  public RawLayout layout() {
    return decoder.layout();
  }

  @Override
  public Samples newSamples() {
    return decoder.newSamples();
  }

  @Override
  public void read(int index, Samples into) throws IOException {
    java.util.Objects.checkIndex(index, count);
    try {
      fill(offset + (long) index * buffer.capacity());
    } catch (IOException e) {
      throw new IOException(path + " can't be read at frame " + index + ": " + e.getMessage(), e);
    }
    if (counts != null) {
      counts.get(0, ((CountSamples) into).counts());
    } else {
      buffer.get(0, bytes);
      decoder.decode(bytes, 0, into);
    }
  }

  private ShortBuffer plainCounts() {
    int first = decoder.layout().firstPixelByte();
    int length = 2 * decoder.layout().width() * decoder.layout().height();
    return buffer.slice(first, length).order(ByteOrder.LITTLE_ENDIAN).asShortBuffer();
  }

  private void fill(long position) throws IOException {
    buffer.clear();
    while (buffer.hasRemaining()) {
      if (file.read(buffer, position + buffer.position()) < 0) {
        throw new EOFException("the file ends at byte " + file.size());
      }
    }
  }

  @Override
  public void close() {
    try {
      file.close();
    } catch (IOException e) {
      // Only read from: nothing can be lost.
      return;
    }
  }

  private static CountScale linearPart(CountScale scale) {
    return scale.isTable() ? CountScale.linear(1, 0) : scale;
  }

  private static long size(Path path) throws IOException {
    if (!Files.isRegularFile(path)) {
      throw new IOException(
          Files.exists(path) ? path + " is not a file of frames" : path + " does not exist");
    }
    return Files.size(path);
  }
}
