package railglow.scpi;

/** Wire text made safe and short enough for a message to a person. */
final class Quoted {
  private static final int MAX = 40;

  private Quoted() {}

  static String of(String text) {
    StringBuilder out = new StringBuilder("'");
    for (int i = 0; i < text.length() && i < MAX; i++) {
      char c = text.charAt(i);
      out.append(c >= ' ' && c < 127 ? String.valueOf(c) : String.format("\\x%02x", (int) c));
    }
    return out.append(text.length() > MAX ? "...'" : "'").toString();
  }

  static String of(char c) {
    return of(String.valueOf(c));
  }
}
