package railglow.camera;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The head of an NPY file (the open array format of NumPy, versions 1.0 to 3.0) that holds frames:
 * shape (frames, rows, columns), C order, element type u1, u2 or f4.
 *
 * @param frames first number of the shape; 1 for a single image
 * @param dataOffset where the first element stands, bytes
 */
record NpyHeader(
    int frames, int rows, int columns, SampleType sample, Endian endian, long dataOffset) {
  private static final byte[] MAGIC = {(byte) 0x93, 'N', 'U', 'M', 'P', 'Y'};
  private static final int MAX_HEADER = 1 << 16;
  private static final Pattern TYPE = Pattern.compile("'descr'\\s*:\\s*'([<>|=])([a-z]\\d+)'");
  private static final Pattern FORTRAN = Pattern.compile("'fortran_order'\\s*:\\s*(True|False)");
  private static final Pattern SHAPE = Pattern.compile("'shape'\\s*:\\s*\\(([0-9, ]*)\\)");

  /**
   * Reads the head.
   *
   * @throws IOException with a sentence that says what the file has and what is wanted
   */
  static NpyHeader read(InputStream input) throws IOException {
    byte[] start = input.readNBytes(8);
    for (int i = 0; i < MAGIC.length; i++) {
      if (start.length < 8 || start[i] != MAGIC[i]) {
        throw new IOException("it does not begin like an NPY file");
      }
    }
    int sizeBytes = start[6] == 1 ? 2 : 4;
    byte[] size = input.readNBytes(sizeBytes);
    if (start[6] < 1 || start[6] > 3 || size.length < sizeBytes) {
      throw new IOException("its NPY version " + start[6] + " is not known");
    }
    long length = new TelemetryField(0, sizeBytes, Endian.LITTLE).read(size, 0);
    if (length > MAX_HEADER) {
      throw new IOException("its NPY head of " + length + " bytes is too long to be one");
    }
    byte[] head = input.readNBytes((int) length);
    if (head.length < length) {
      throw new IOException("it ends within its NPY head");
    }
    return parse(new String(head, StandardCharsets.UTF_8), 8L + sizeBytes + length);
  }

  private static NpyHeader parse(String text, long dataOffset) throws IOException {
    Matcher type = TYPE.matcher(text);
    Matcher order = FORTRAN.matcher(text);
    Matcher shape = SHAPE.matcher(text);
    if (!type.find() || !order.find() || !shape.find()) {
      throw new IOException("its NPY head lacks type, order or shape of a plain array");
    }
    SampleType sample =
        switch (type.group(2)) {
          case "u1" -> SampleType.U8;
          case "u2" -> SampleType.U16;
          case "i2" -> SampleType.I16;
          case "f4" -> SampleType.F32;
          default ->
              throw new IOException(
                  "its elements are '" + type.group(2) + "'; save it as uint16 or float32");
        };
    if (order.group(1).equals("True")) {
      throw new IOException("it is in Fortran order; save it in C order");
    }
    int[] sizes = sizes(shape.group(1));
    Endian endian = type.group(1).equals(">") ? Endian.BIG : Endian.LITTLE;
    return new NpyHeader(sizes[0], sizes[1], sizes[2], sample, endian, dataOffset);
  }

  private static int[] sizes(String text) throws IOException {
    String[] parts = text.isBlank() ? new String[0] : text.replaceAll("[ ]|,$", "").split(",");
    String wanted = "its shape is (" + text + "); wanted is (frames, rows, columns)";
    if (parts.length != 2 && parts.length != 3) {
      throw new IOException(wanted);
    }
    int[] sizes = {1, 0, 0};
    try {
      for (int i = 0; i < parts.length; i++) {
        sizes[3 - parts.length + i] = Integer.parseInt(parts[i]);
      }
    } catch (NumberFormatException e) {
      throw new IOException(wanted, e);
    }
    if (sizes[0] < 1 || sizes[1] < 1 || sizes[2] < 1) {
      throw new IOException(wanted + ", all at least 1");
    }
    return sizes;
  }
}
