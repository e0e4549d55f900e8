package railglow.link;

/** Bytes as one line of printable text. */
final class TranscriptText {
  private TranscriptText() {}

  static String quoted(byte[] bytes, int from, int to) {
    StringBuilder out = new StringBuilder("\"");
    for (int i = from; i < to; i++) {
      int b = bytes[i] & 0xff;
      switch (b) {
        case '\n' -> out.append("\\n");
        case '\r' -> out.append("\\r");
        case '"' -> out.append("\\\"");
        case '\\' -> out.append("\\\\");
        default -> {
          if (b >= ' ' && b < 127) {
            out.append((char) b);
          } else {
            out.append(String.format("\\x%02x", b));
          }
        }
      }
    }
    return out.append('"').toString();
  }
}
