package railglow.link;

import java.nio.charset.StandardCharsets;

/** The end of a text of any length. Thread-safe. */
final class LastWords {
  private static final int KEPT_BYTES = 2048;
  private static final int SHOWN_CHARS = 300;
  private final byte[] kept = new byte[KEPT_BYTES];
  private long total;

  synchronized void add(byte[] bytes, int count) {
    for (int i = Math.max(0, count - KEPT_BYTES); i < count; i++) {
      kept[(int) ((total + i) % KEPT_BYTES)] = bytes[i];
    }
    total += count;
  }

  void add(String text) {
    byte[] bytes = (text + "\n").getBytes(StandardCharsets.UTF_8);
    add(bytes, bytes.length);
  }

  /** {@code "; its last words: ..."} on one line, or nothing when there were none. */
  synchronized String sentence() {
    int length = (int) Math.min(total, KEPT_BYTES);
    byte[] ordered = new byte[length];
    for (int i = 0; i < length; i++) {
      ordered[i] = kept[(int) ((total - length + i) % KEPT_BYTES)];
    }
    String text = new String(ordered, StandardCharsets.UTF_8).strip().replaceAll("\\s+", " ");
    if (text.isEmpty()) {
      return " and no message";
    }
    int cut = Math.max(0, text.length() - SHOWN_CHARS);
    return "; its last words: " + (cut > 0 ? "..." : "") + text.substring(cut);
  }
}
