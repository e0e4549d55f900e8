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
  /**
   * Plain counts are read so many bytes at a time: most frames in one call, and still in the second
   * cache when copied.
   */
  private static final int PIECE = 1 << 17;

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
    int whole = decoder.layout().frameBytes();
    boolean plain = decoder.isPlainCounts();
    this.buffer = ByteBuffer.allocateDirect(plain ? PIECE : whole).order(ByteOrder.LITTLE_ENDIAN);
    this.counts = plain ? buffer.asShortBuffer() : null;
    this.bytes = plain ? null : new byte[whole];
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
    long start = offset + (long) index * decoder.layout().frameBytes();
    try {
      if (counts != null) {
        readCounts(start + decoder.layout().firstPixelByte(), ((CountSamples) into).counts());
      } else {
        fill(start, bytes.length);
      }
    } catch (IOException e) {
      throw new IOException(path + " can't be read at frame " + index + ": " + e.getMessage(), e);
    }
    if (counts == null) {
      buffer.get(0, bytes);
      decoder.decode(bytes, 0, into);
    }
  }

  private void readCounts(long start, short[] into) throws IOException {
    for (int done = 0; done < into.length; done += PIECE / 2) {
      int part = Math.min(PIECE / 2, into.length - done);
      fill(start + 2L * done, 2 * part);
      counts.get(0, into, done, part);
    }
  }

  private void fill(long position, int length) throws IOException {
    buffer.clear().limit(length);
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
