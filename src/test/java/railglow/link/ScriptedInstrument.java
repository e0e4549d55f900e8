package railglow.link;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;

/**
 * The other end of a wire for tests: cuts what comes into lines and answers each by a script.
 * Thread-safe.
 */
final class ScriptedInstrument {
  static final String IDENTITY = "ACME,PS-1,0,1.0";
  private final List<String> lines = new ArrayList<>();
  private final StringBuilder partial = new StringBuilder();
  private Function<String, String> script = line -> "";
  private boolean byteByByte;
  private boolean mute;

  /** Answers are sent as they are; the script adds the terminators it wants. */
  synchronized void answers(Function<String, String> byLine) {
    script = byLine;
  }

  synchronized void sendByteByByte() {
    byteByByte = true;
  }

  /** Leaves the identity to the script too. */
  synchronized void hideIdentity() {
    mute = true;
  }

  synchronized boolean isByteByByte() {
    return byteByByte;
  }

  /** Takes bytes and gives what is to be sent back. */
  synchronized String receive(String text) {
    StringBuilder answer = new StringBuilder();
    for (char c : text.toCharArray()) {
      if (c != '\n' && c != '\r') {
        partial.append(c);
      } else if (partial.length() > 0) {
        String line = partial.toString();
        partial.setLength(0);
        lines.add(line);
        answer.append(line.equals("*IDN?") && !mute ? IDENTITY + "\n" : script.apply(line));
      }
    }
    return answer.toString();
  }

  /** The lines that came so far. */
  synchronized List<String> received() {
    return List.copyOf(lines);
  }
}
