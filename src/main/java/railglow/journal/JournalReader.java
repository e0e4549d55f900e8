package railglow.journal;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.BufferedInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/**
 * Reads a journal whatever happened to it: cut at any byte it gives every whole entry; lines that
 * were changed, lost or written twice are reported with their place and left out. Only a journal
 * without a readable header, or of a newer format, is refused.
 */
public final class JournalReader {
  private static final int MOST_LINE_BYTES = 16 << 20;
  private static final int MOST_DAMAGES = 10_000;
  private final String fileName;
  private final List<Entry> entries = new ArrayList<>();
  private final List<Damage> damages = new ArrayList<>();
  private RunHeader header;
  private long offset;
  private long line;
  private long expectedNumber;
  private long damagedSinceWhole;
  private long unfinishedBytes;

  private JournalReader(String fileName) {
    this.fileName = fileName;
  }

  public static Journal read(RunFolder folder) throws IOException {
    return read(folder.journal());
  }

  /**
   * Reads a journal file.
   *
   * @throws JournalException when there is no such file, no whole header or a newer format
   */
  public static Journal read(Path file) throws IOException {
    try (InputStream in = new BufferedInputStream(Files.newInputStream(file), 1 << 16)) {
      return new JournalReader(String.valueOf(file.getFileName())).read(in);
    } catch (NoSuchFileException e) {
      throw new JournalException(
          "there is no journal at " + file + "; is this the run folder you meant?", e);
    } catch (JournalException e) {
      throw new JournalException(file + ": " + e.getMessage(), e);
    }
  }

  private Journal read(InputStream in) throws IOException {
    ByteArrayOutputStream pending = new ByteArrayOutputStream(512);
    long length = 0;
    for (int b = in.read(); b >= 0; b = in.read()) {
      if (b != '\n') {
        length++;
        // of a line that no run can have written only the start is kept, enough to be refused
        if (length <= MOST_LINE_BYTES) {
          pending.write(b);
        }
        continue;
      }
      take(pending.toByteArray(), length, true);
      offset += length + 1;
      length = 0;
      pending.reset();
    }
    if (length > 0) {
      take(pending.toByteArray(), length, false);
    }
    if (header == null) {
      throw new JournalException(
          "no whole header"
              + (damages.isEmpty() ? "" : " (" + damages.get(0).what() + ")")
              + ": the run ended before it began, or this is no journal");
    }
    return new Journal(header, entries, damages, unfinishedBytes);
  }

  /**
   * @param length of the line in the file, more than the bytes if it was too long to keep
   * @param ended whether a line end follows
   */
  private void take(byte[] bytes, long length, boolean ended) throws JournalException {
    line++;
    if (header == null) {
      refuseNewer(bytes);
    }
    try {
      if (length > bytes.length) {
        throw new JournalException("it is " + length + " bytes long, more than any entry");
      }
      ObjectNode object = JournalLine.object(bytes);
      checkNumber(object.path("n"));
      object.remove(List.of("n", "crc"));
      if (header == null) {
        takeHeader(object);
      } else {
        takeEntry(object);
      }
    } catch (JournalException | JsonProcessingException e) {
      if (ended) {
        damagedSinceWhole++;
        report("line " + line + ": " + JournalLine.firstLine(e.getMessage()));
      } else {
        unfinishedBytes = length;
      }
    }
  }

  /** So much damage that no one reads it all must not fill the memory. */
  private void report(String what) {
    if (damages.size() < MOST_DAMAGES) {
      damages.add(new Damage(fileName, offset, what));
    } else if (damages.size() == MOST_DAMAGES) {
      damages.add(new Damage(fileName, offset, "from here on more damage, not listed"));
    }
  }

  private void takeEntry(ObjectNode object) throws JsonProcessingException {
    entries.add(JournalJson.MAPPER.treeToValue(object, Entry.class));
  }

  private void takeHeader(ObjectNode object) throws JournalException, JsonProcessingException {
    if (!object.path("kind").asText().equals("header")) {
      throw new JournalException("a journal starts with its header, this is something else");
    }
    object.remove("kind");
    OlderHeader.complete(object);
    header = JournalJson.MAPPER.treeToValue(object, RunHeader.class);
  }

  /** A gap or a repetition in the numbers is reported once, at the line after it. */
  private void checkNumber(JsonNode node) throws JournalException {
    if (!node.canConvertToLong()) {
      throw new JournalException("the line has no number");
    }
    long number = node.longValue();
    if (number < expectedNumber) {
      throw new JournalException(
          "entry " + number + " again, where " + expectedNumber + " was due: left out");
    }
    if (number - expectedNumber > damagedSinceWhole) {
      report("entries " + expectedNumber + " to " + (number - 1) + " are not there");
    }
    expectedNumber = number + 1;
    damagedSinceWhole = 0;
  }

  /** Refuses a file that says it has a newer format, before anything else is judged. */
  static void refuseNewer(ObjectNode header) throws JournalException {
    JsonNode version = header.path("formatVersion");
    if (version.isIntegralNumber() && version.longValue() > RunHeader.NEWEST_FORMAT) {
      throw new JournalException(
          "written in run folder format "
              + version
              + "; this program reads up to format "
              + RunHeader.NEWEST_FORMAT
              + ": use a newer Railglow");
    }
  }

  private static void refuseNewer(byte[] line) throws JournalException {
    ObjectNode header;
    try {
      header = JournalLine.json(line);
    } catch (JournalException e) {
      return;
    }
    refuseNewer(header);
  }
}
