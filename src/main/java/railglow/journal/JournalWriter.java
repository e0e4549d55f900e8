package railglow.journal;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;

/**
 * Writes a journal: header first, entry by entry, closing entry last; never changes what is
 * written. Every entry is with the operating system before {@link #append} returns, and on the disk
 * itself after an edge, a stop and the closing entry. Not thread-safe: the scribe owns it.
 */
public final class JournalWriter implements AutoCloseable {
  private final Path path;
  private final FileChannel channel;
  private long lines;
  private boolean closedEntryWritten;

  private JournalWriter(Path path, FileChannel channel) {
    this.path = path;
    this.channel = channel;
  }

  /**
   * Starts the journal of a new run.
   *
   * @param plannedBytes what the whole run may write into its folder, frames included
   * @throws JournalException when the folder can't be written, has no room, or holds a journal
   */
  public static JournalWriter create(RunFolder folder, RunHeader header, long plannedBytes)
      throws IOException {
    folder.prepare(plannedBytes);
    FileChannel channel;
    try {
      channel =
          FileChannel.open(
              folder.journal(), StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
    } catch (FileAlreadyExistsException e) {
      throw new JournalException(
          folder.journal() + " is there already; a run never writes over another: choose a new one",
          e);
    }
    JournalWriter writer = new JournalWriter(folder.journal(), channel);
    try {
      writer.write(JournalLine.of(0, header));
      channel.force(true);
      return writer;
    } catch (IOException | RuntimeException e) {
      channel.close();
      throw e;
    }
  }

  /**
   * Adds one entry.
   *
   * @throws IOException when the disk does not take it or the file is gone; the run must then stop
   * @throws IllegalStateException after the closing entry
   */
  public void append(Entry entry) throws IOException {
    if (closedEntryWritten) {
      throw new IllegalStateException("nothing follows the closing entry");
    }
    write(JournalLine.of(lines, entry));
    if (entry instanceof Entry.EdgeMade
        || entry instanceof Entry.Stopped
        || entry instanceof Entry.Closed) {
      channel.force(false);
      // A file that was removed still takes bytes, and nobody would ever read them.
      if (Files.notExists(path)) {
        throw new JournalException(path + " has been removed while it was written");
      }
    }
    closedEntryWritten = entry instanceof Entry.Closed;
  }

  /** Lines written, the header among them. */
  public long lines() {
    return lines;
  }

  private void write(byte[] line) throws IOException {
    ByteBuffer buffer = ByteBuffer.wrap(line);
    while (buffer.hasRemaining()) {
      channel.write(buffer);
    }
    lines++;
  }

  /** Forces and closes the file; writes no closing entry by itself. */
  @Override
  public void close() throws IOException {
    if (channel.isOpen()) {
      try {
        channel.force(true);
      } finally {
        channel.close();
      }
    }
  }
}
