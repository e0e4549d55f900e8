package railglow.supply;

import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;

/**
 * The bytes between a controller and its companion. The controller sends the descriptor's text
 * first, then single bytes; the companion answers with single bytes.
 */
final class CompanionTalk {
  /** To the companion: the controller lives. */
  static final int BEAT = 'b';

  /** To the companion: the output is proven off, leave it alone and end. */
  static final int GOODBYE = 'q';

  /** From the companion: it has its own open way to the supply. */
  static final int OWN_WAY = 'r';

  /** From the companion: the way is taken by the controller; it opens it when it is free. */
  static final int WAY_WHEN_FREE = 'w';

  /** From the companion: a beat was heard. */
  static final int HEARD = 'a';

  /** From the companion: the beats have stopped, it is driving the output off. */
  static final int ACTING = 't';

  /** From the companion: proven off. */
  static final int PROVEN = 'p';

  private static final int MOST_TEXT_BYTES = 1 << 20;

  private CompanionTalk() {}

  static void sendText(OutputStream out, String text) throws IOException {
    byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
    DataOutputStream data = new DataOutputStream(out);
    data.writeInt(bytes.length);
    data.write(bytes);
    data.flush();
  }

  static String readText(InputStream in) throws IOException {
    DataInputStream data = new DataInputStream(in);
    int length = data.readInt();
    if (length < 0 || length > MOST_TEXT_BYTES) {
      throw new IOException("a descriptor of " + length + " bytes can't be");
    }
    byte[] bytes = new byte[length];
    data.readFully(bytes);
    return new String(bytes, StandardCharsets.UTF_8);
  }
}
