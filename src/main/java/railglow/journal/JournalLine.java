package railglow.journal;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.charset.StandardCharsets;
import java.util.HexFormat;
import java.util.zip.CRC32C;

/**
 * One line of a journal: a JSON object whose first member {@code n} counts the lines from 0 and
 * whose last member {@code crc} is the CRC-32C of every byte of the line before it, as 8 hex
 * digits. A line is therefore known to be whole without its line end. Stateless.
 */
final class JournalLine {
  private static final byte[] CRC_START = ",\"crc\":\"".getBytes(StandardCharsets.US_ASCII);
  private static final int TAIL = CRC_START.length + 8 + 2;

  private JournalLine() {}

  static byte[] of(long number, Entry entry) throws JsonProcessingException {
    return of(number, JournalJson.MAPPER.writerFor(Entry.class).writeValueAsBytes(entry));
  }

  static byte[] of(long number, RunHeader header) throws JsonProcessingException {
    ObjectNode fields = JournalJson.MAPPER.valueToTree(header);
    ObjectNode line = JournalJson.MAPPER.createObjectNode().put("kind", "header");
    line.setAll(fields);
    return of(number, JournalJson.MAPPER.writeValueAsBytes(line));
  }

  static byte[] of(long number, ObjectNode object) throws JsonProcessingException {
    return of(number, JournalJson.MAPPER.writeValueAsBytes(object));
  }

  /** Puts number, check sum and line end round a JSON object. */
  private static byte[] of(long number, byte[] object) {
    byte[] start = ("{\"n\":" + number + ",").getBytes(StandardCharsets.US_ASCII);
    int body = start.length + object.length - 2;
    byte[] line = new byte[body + TAIL + 1];
    System.arraycopy(start, 0, line, 0, start.length);
    System.arraycopy(object, 1, line, start.length, object.length - 2);
    System.arraycopy(CRC_START, 0, line, body, CRC_START.length);
    byte[] digits = crc(line, body).getBytes(StandardCharsets.US_ASCII);
    System.arraycopy(digits, 0, line, body + CRC_START.length, digits.length);
    line[line.length - 3] = '"';
    line[line.length - 2] = '}';
    line[line.length - 1] = '\n';
    return line;
  }

  /**
   * The object of a line (without its line end).
   *
   * @throws JournalException saying what is wrong with it
   */
  static ObjectNode object(byte[] line) throws JournalException {
    int body = line.length - TAIL;
    if (body < 1 || !hasTail(line, body)) {
      throw new JournalException("the line has no check sum at its end");
    }
    String stored = new String(line, body + CRC_START.length, 8, StandardCharsets.ISO_8859_1);
    String computed = crc(line, body);
    if (!stored.equals(computed)) {
      throw new JournalException(
          "the check sum is " + stored + " but the text gives " + computed + ": it was changed");
    }
    return json(line);
  }

  /** The object of a line whatever its check sum says. */
  static ObjectNode json(byte[] line) throws JournalException {
    try {
      JsonNode node = JournalJson.MAPPER.readTree(line);
      if (node instanceof ObjectNode object) {
        return object;
      }
      throw new JournalException("the line is not a JSON object");
    } catch (java.io.IOException e) {
      throw e instanceof JournalException known
          ? known
          : new JournalException("the line is not JSON: " + firstLine(e.getMessage()), e);
    }
  }

  static String firstLine(String text) {
    if (text == null) {
      return "";
    }
    int end = text.indexOf('\n');
    return end < 0 ? text : text.substring(0, end);
  }

  private static boolean hasTail(byte[] line, int body) {
    for (int i = 0; i < CRC_START.length; i++) {
      if (line[body + i] != CRC_START[i]) {
        return false;
      }
    }
    return line[line.length - 2] == '"' && line[line.length - 1] == '}';
  }

  private static String crc(byte[] line, int length) {
    CRC32C crc = new CRC32C();
    crc.update(line, 0, length);
    return HexFormat.of().toHexDigits((int) crc.getValue());
  }
}
