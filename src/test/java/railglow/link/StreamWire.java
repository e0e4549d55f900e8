package railglow.link;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;

/** Lets a {@link ScriptedInstrument} answer on two streams, on a thread of its own. */
final class StreamWire {
  private StreamWire() {}

  static Thread serve(ScriptedInstrument instrument, InputStream in, OutputStream out) {
    Thread thread =
        new Thread(
            () -> {
              byte[] buffer = new byte[4096];
              try {
                for (int n = in.read(buffer); n >= 0; n = in.read(buffer)) {
                  send(instrument, out, new String(buffer, 0, n, StandardCharsets.ISO_8859_1));
                }
              } catch (IOException e) {
                // the wire was closed: the instrument is done
                return;
              }
            },
            "instrument");
    thread.setDaemon(true);
    thread.start();
    return thread;
  }

  private static void send(ScriptedInstrument instrument, OutputStream out, String received)
      throws IOException {
    byte[] answer = instrument.receive(received).getBytes(StandardCharsets.ISO_8859_1);
    int step = instrument.isByteByByte() ? 1 : Math.max(1, answer.length);
    for (int i = 0; i < answer.length; i += step) {
      out.write(answer, i, Math.min(step, answer.length - i));
      out.flush();
    }
  }
}
