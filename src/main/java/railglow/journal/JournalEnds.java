package railglow.journal;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * The first and the last entry of a journal, without reading what lies between: enough to list many
 * runs quickly. Says nothing of damage; {@link JournalReader} does.
 *
 * @param closed empty when the journal does not end with a closing entry
 */
public record JournalEnds(RunHeader header, Optional<Entry.Closed> closed) {
  private static final int MOST_HEADER = 1 << 24;
  private static final int TAIL = 4096;

  /** The name of the sequence that was run. */
  public String sequenceName() {
    return header.sequence().name();
  }

  /** The level that was injected; 0 when nothing was. */
  public double levelVolts() {
    return header.sequence().levelVolts();
  }

  /** The name of the cause of the run's end; empty when the journal does not say. */
  public Optional<String> cause() {
    return closed.map(entry -> entry.cause().name());
  }

  /**
   * Reads both ends.
   *
   * @throws JournalException when there is no whole header or a newer format
   */
  public static JournalEnds read(Path journal) throws IOException {
    try (RandomAccessFile file = new RandomAccessFile(journal.toFile(), "r")) {
      byte[] start = new byte[(int) Math.min(file.length(), 1 << 14)];
      file.readFully(start);
      int end = indexOfLineEnd(start, 0);
      if (end < 0 && file.length() > start.length) {
        start = Arrays.copyOf(start, (int) Math.min(file.length(), MOST_HEADER));
        file.seek(0);
        file.readFully(start);
        end = indexOfLineEnd(start, 0);
      }
      if (end < 0) {
        throw new JournalException(journal + ": no whole header: the run ended before it began");
      }
      return new JournalEnds(header(journal, Arrays.copyOf(start, end)), closed(file));
    } catch (java.io.FileNotFoundException e) {
      throw new JournalException("there is no journal at " + journal, e);
    }
  }

  private static RunHeader header(Path journal, byte[] line) throws JournalException {
    try {
      JournalReader.refuseNewer(JournalLine.json(line));
      ObjectNode object = JournalLine.object(line);
      object.remove(List.of("n", "crc", "kind"));
      OlderHeader.complete(object);
      return JournalJson.MAPPER.treeToValue(object, RunHeader.class);
    } catch (JournalException e) {
      throw new JournalException(journal + ": " + e.getMessage(), e);
    } catch (JsonProcessingException e) {
      throw new JournalException(
          journal + ": the header can't be read: " + JournalLine.firstLine(e.getMessage()), e);
    }
  }

  private static Optional<Entry.Closed> closed(RandomAccessFile file) throws IOException {
    byte[] tail = new byte[(int) Math.min(file.length(), TAIL)];
    file.seek(file.length() - tail.length);
    file.readFully(tail);
    int end = tail.length > 0 && tail[tail.length - 1] == '\n' ? tail.length - 1 : tail.length;
    int start = end;
    while (start > 0 && tail[start - 1] != '\n') {
      start--;
    }
    try {
      ObjectNode object = JournalLine.object(Arrays.copyOfRange(tail, start, end));
      if (!object.path("kind").asText().equals("closed")) {
        return Optional.empty();
      }
      object.remove(List.of("n", "crc"));
      return Optional.of((Entry.Closed) JournalJson.MAPPER.treeToValue(object, Entry.class));
    } catch (JournalException | JsonProcessingException e) {
      return Optional.empty();
    }
  }

  private static int indexOfLineEnd(byte[] bytes, int from) {
    for (int i = from; i < bytes.length; i++) {
      if (bytes[i] == '\n') {
        return i;
      }
    }
    return -1;
  }
}
