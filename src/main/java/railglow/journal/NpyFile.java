package railglow.journal;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import railglow.thermal.Plane;

/**
 * Planes as NPY files: format 1.0, little-endian float32, C order, shape (height, width). Every bit
 * of every value returns. Stateless and thread-safe.
 */
public final class NpyFile {
  private static final byte[] MAGIC = {(byte) 0x93, 'N', 'U', 'M', 'P', 'Y', 1, 0};
  private static final Pattern HEADER =
      Pattern.compile(
          "\\{\\s*'descr'\\s*:\\s*'<f4'\\s*,\\s*'fortran_order'\\s*:\\s*False\\s*,"
              + "\\s*'shape'\\s*:\\s*\\(\\s*(\\d{1,5})\\s*,\\s*(\\d{1,5})\\s*,?\\s*\\)\\s*,?\\s*\\}\\s*");

  private NpyFile() {}

  /** Writes a plane; makes the folder where there is none; replaces a file of that name whole. */
  public static void write(Path file, Plane plane) throws IOException {
    String text =
        "{'descr': '<f4', 'fortran_order': False, 'shape': ("
            + plane.height()
            + ", "
            + plane.width()
            + "), }";
    int unpadded = MAGIC.length + 2 + text.length() + 1;
    String header = text + " ".repeat(Math.floorMod(-unpadded, 64)) + "\n";
    ByteBuffer bytes =
        ByteBuffer.allocate(MAGIC.length + 2 + header.length() + 4 * plane.values().length)
            .order(ByteOrder.LITTLE_ENDIAN);
    bytes.put(MAGIC).putShort((short) header.length());
    bytes.put(header.getBytes(StandardCharsets.US_ASCII));
    bytes.asFloatBuffer().put(plane.values());
    WholeFile.write(file, bytes.array());
  }

  /**
   * Reads a plane.
   *
   * @throws JournalException when the file is none that {@link #write} could have made
   */
  public static Plane read(Path file) throws IOException {
    byte[] bytes;
    try {
      bytes = Files.readAllBytes(file);
    } catch (NoSuchFileException e) {
      throw new JournalException("there is no plane at " + file, e);
    }
    ByteBuffer buffer = ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN);
    for (byte expected : MAGIC) {
      if (!buffer.hasRemaining() || buffer.get() != expected) {
        throw new JournalException(file + " is not an NPY file of format 1.0");
      }
    }
    int length = buffer.remaining() < 2 ? 0 : buffer.getShort() & 0xFFFF;
    if (buffer.remaining() < length) {
      throw new JournalException(file + " is cut short in its header");
    }
    String header = new String(bytes, buffer.position(), length, StandardCharsets.US_ASCII);
    Matcher matcher = HEADER.matcher(header);
    if (!matcher.matches()) {
      throw new JournalException(
          file + " is not a plane of little-endian float32: its header is " + header.strip());
    }
    buffer.position(buffer.position() + length);
    int height = Integer.parseInt(matcher.group(1));
    int width = Integer.parseInt(matcher.group(2));
    if (width == 0 || height == 0 || buffer.remaining() != 4L * width * height) {
      throw new JournalException(
          file
              + " has "
              + buffer.remaining()
              + " bytes of values; "
              + width
              + " x "
              + height
              + " need "
              + 4L * width * height);
    }
    Plane plane = new Plane(width, height);
    buffer.asFloatBuffer().get(plane.values());
    return plane;
  }
}
