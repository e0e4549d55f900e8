package railglow.journal;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.FileChannel;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import railglow.observed.Frame;
import railglow.thermal.Samples;

/**
 * Reads stored frames in order, whatever happened to the file: cut at any byte it gives every whole
 * frame; a changed byte costs the frames it touches, which are reported. Only a file without a
 * readable header, or of a newer format, is refused. Not thread-safe.
 */
public final class FrameStoreReader implements AutoCloseable {
  private static final int MAX_HEADER_LINE = 4096;
  private static final int MAX_PIXELS = 1 << 26;
  private static final int SCAN_BYTES = 1 << 16;

  private final FileChannel channel;
  private final String fileName;
  private final long size;
  private final int width;
  private final int height;
  private final SampleType type;
  private final FrameCodec codec;
  private final ByteBuffer head =
      ByteBuffer.allocate(ChunkHeader.BYTES).order(ByteOrder.LITTLE_ENDIAN);
  private final ByteBuffer payload;
  private final List<Damage> damages = new ArrayList<>();
  private final long firstPlace;
  private long position;
  private long nextOrdinal;
  private boolean canLean;
  private boolean finished;
  private long unfinishedBytes;

  private FrameStoreReader(FileChannel channel, Path file) throws IOException {
    this.channel = channel;
    this.fileName = String.valueOf(file.getFileName());
    this.size = channel.size();
    ObjectNode header = readHeader(file);
    this.firstPlace = position;
    this.width = header.path("width").asInt();
    this.height = header.path("height").asInt();
    if (width <= 0 || height <= 0 || (long) width * height > MAX_PIXELS) {
      throw new JournalException(file + ": frames of " + width + " x " + height + " can't be");
    }
    this.type = SampleType.named(header.path("sampleType").asText());
    this.codec = FrameCodec.named(header.path("codec").asText(), type, width, height);
    this.payload = ByteBuffer.allocate(codec.maxBytes()).order(ByteOrder.LITTLE_ENDIAN);
  }

  /**
   * Opens a file of frames.
   *
   * @throws JournalException when there is none, or its header can't be read, or it is newer
   */
  public static FrameStoreReader open(Path file) throws IOException {
    FileChannel channel;
    try {
      channel = FileChannel.open(file, StandardOpenOption.READ);
    } catch (NoSuchFileException e) {
      throw new JournalException("there are no frames at " + file, e);
    }
    try {
      return new FrameStoreReader(channel, file);
    } catch (IOException | RuntimeException e) {
      channel.close();
      throw e;
    }
  }

  public int width() {
    return width;
  }

  public int height() {
    return height;
  }

  public SampleType sampleType() {
    return type;
  }

  /** A fresh image to read into. */
  public Samples newSamples() {
    return type.newSamples(width, height);
  }

  /**
   * Reads the next whole frame.
   *
   * @param frame filled with number, arrival, stored marks and pixels
   * @return false at the end; the frame's content is then undefined
   */
  public boolean next(Frame frame) throws IOException {
    while (position < size && !finished) {
      ChunkHeader header = headerAt(position);
      if (header == null) {
        skipTo(nextHeaderAfter(position), "bytes that are no frame");
      } else if (header.kind() == ChunkHeader.END) {
        reportLost(header.ordinal());
        finished = true;
      } else if (size - position - ChunkHeader.BYTES < header.payloadBytes()) {
        skipTo(nextHeaderAfter(position), "frame " + header.number() + " is cut short");
      } else if (take(header, frame)) {
        return true;
      }
    }
    return false;
  }

  /**
   * One stored frame without its pixels.
   *
   * @param independent whether it leans on no other
   * @param place in the file, for {@link #read}
   */
  public record Stamp(
      long number, long arrivalNanos, long ordinal, boolean independent, long place) {}

  /** Every frame of the file by its header alone, in order; reads no pixels. */
  public List<Stamp> stamps() throws IOException {
    List<Stamp> stamps = new ArrayList<>();
    long at = firstPlace;
    while (at < size) {
      ChunkHeader header = headerAt(at);
      if (header == null) {
        at = nextHeaderAfter(at);
      } else if (header.kind() == ChunkHeader.END) {
        break;
      } else {
        stamps.add(
            new Stamp(
                header.number(),
                header.arrivalNanos(),
                header.ordinal(),
                header.kind() == ChunkHeader.INDEPENDENT,
                at));
        at += ChunkHeader.BYTES + header.payloadBytes();
      }
    }
    return stamps;
  }

  /**
   * Reads one frame out of order; the next one read in order is the one after it.
   *
   * @param stamps all of {@link #stamps}
   * @return false when it can't be read because it, or one it leans on, is damaged
   */
  public boolean read(List<Stamp> stamps, int index, Frame frame) throws IOException {
    int first = index;
    while (first > 0 && !stamps.get(first).independent()) {
      first--;
    }
    position = stamps.get(first).place();
    nextOrdinal = stamps.get(first).ordinal();
    canLean = false;
    finished = false;
    long wanted = stamps.get(index).place();
    while (position <= wanted) {
      long here = position;
      if (!next(frame)) {
        return false;
      }
      if (here == wanted) {
        return frame.number() == stamps.get(index).number();
      }
    }
    return false;
  }

  /** Whether the mark of the end was reached; meaningful when {@link #next} gave false. */
  public boolean finished() {
    return finished;
  }

  /** What was left out so far. */
  public List<Damage> damages() {
    return List.copyOf(damages);
  }

  /** Bytes after the last whole frame of a file that was not finished. */
  public long unfinishedBytes() {
    return unfinishedBytes;
  }

  @Override
  public void close() throws IOException {
    channel.close();
  }

  private boolean take(ChunkHeader header, Frame frame) throws IOException {
    String problem = null;
    if (header.payloadBytes() > payload.capacity()) {
      problem = "has more bytes than a frame can have";
    } else {
      payload.clear().limit(header.payloadBytes());
      readFully(payload, position + ChunkHeader.BYTES);
      if (ChunkHeader.crc(payload, 0, header.payloadBytes()) != header.payloadCrc()) {
        problem = "was changed: its check sum does not fit";
      }
    }
    boolean independent = header.kind() == ChunkHeader.INDEPENDENT;
    canLean &= header.ordinal() == nextOrdinal;
    if (problem == null && !independent && !canLean) {
      problem = "leans on a frame that is not there";
    }
    if (problem == null) {
      try {
        codec.decode(payload.rewind(), independent, frame.samples());
      } catch (JournalException e) {
        problem = "can't be decoded: " + e.getMessage();
      }
    }
    reportLost(header.ordinal());
    nextOrdinal = header.ordinal() + 1;
    if (problem != null) {
      canLean = false;
      skipTo(nextHeaderAfter(position), "frame " + header.number() + " " + problem);
      return false;
    }
    canLean = true;
    position += ChunkHeader.BYTES + header.payloadBytes();
    frame.begin(header.number(), header.arrivalNanos());
    frame.marks().addAll(ChunkHeader.marks(header.marks()));
    return true;
  }

  private void reportLost(long ordinal) {
    if (ordinal > nextOrdinal) {
      damages.add(
          new Damage(
              fileName, position, (ordinal - nextOrdinal) + " frames before here are not there"));
    }
  }

  private void skipTo(long next, String what) {
    if (next >= size) {
      unfinishedBytes = size - position;
    } else {
      damages.add(new Damage(fileName, position, what));
    }
    position = next;
  }

  private ChunkHeader headerAt(long at) throws IOException {
    if (size - at < ChunkHeader.BYTES) {
      return null;
    }
    head.clear();
    readFully(head, at);
    return ChunkHeader.at(head, 0);
  }

  /** The place of the next header after one; the file's size when there is none. */
  private long nextHeaderAfter(long from) throws IOException {
    ByteBuffer window = ByteBuffer.allocate(SCAN_BYTES).order(ByteOrder.LITTLE_ENDIAN);
    long start = from + 1;
    while (size - start >= ChunkHeader.BYTES) {
      window.clear().limit((int) Math.min(SCAN_BYTES, size - start));
      readFully(window, start);
      int places = window.limit() - ChunkHeader.BYTES + 1;
      for (int i = 0; i < places; i++) {
        if (ChunkHeader.at(window, i) != null) {
          return start + i;
        }
      }
      start += places;
    }
    return size;
  }

  private void readFully(ByteBuffer into, long at) throws IOException {
    long from = at;
    while (into.hasRemaining()) {
      int count = channel.read(into, from);
      if (count < 0) {
        throw new JournalException(fileName + " became shorter while it was read");
      }
      from += count;
    }
  }

  private ObjectNode readHeader(Path file) throws IOException {
    ByteBuffer start = ByteBuffer.allocate((int) Math.min(MAX_HEADER_LINE, size));
    readFully(start, 0);
    int end = 0;
    while (end < start.limit() && start.get(end) != '\n') {
      end++;
    }
    if (end == start.limit()) {
      throw new JournalException(
          file + ": no whole header: no frame was stored, or it is no such file");
    }
    byte[] line = Arrays.copyOf(start.array(), end);
    position = end + 1L;
    try {
      ObjectNode header = JournalLine.json(line);
      JournalReader.refuseNewer(header);
      header = JournalLine.object(line);
      if (!header.path("kind").asText().equals("frames")) {
        throw new JournalException("the header is not that of stored frames");
      }
      return header;
    } catch (JournalException e) {
      throw new JournalException(file + ": " + e.getMessage(), e);
    }
  }
}
