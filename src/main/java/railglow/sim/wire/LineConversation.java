package railglow.sim.wire;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import railglow.sim.fault.FaultSwitches;
import railglow.time.MonotonicClock;
import railglow.time.Waits;

/** One controller's connection: reads lines, has them answered, sends the answers. */
final class LineConversation {
  private static final int MAX_LINE = 65_536;
  private final InputStream in;
  private final OutputStream out;
  private final LineService service;
  private final ReplyWire wire;
  private final WireHabits habits;
  private final MonotonicClock clock;
  private boolean spoken;
  private long lastEndNanos;

  LineConversation(
      InputStream in,
      OutputStream out,
      LineService service,
      FaultSwitches faults,
      WireHabits habits,
      MonotonicClock clock) {
    this.in = in;
    this.out = out;
    this.service = service;
    this.wire = new ReplyWire(faults, habits);
    this.habits = habits;
    this.clock = clock;
  }

  /** Serves until the other side ends or the connection breaks. */
  void serve() throws IOException {
    byte[] buffer = new byte[4096];
    StringBuilder line = new StringBuilder();
    while (true) {
      int count = in.read(buffer);
      if (count < 0) {
        return;
      }
      String text = new String(buffer, 0, count, StandardCharsets.ISO_8859_1);
      for (int i = 0; i < text.length(); i++) {
        char c = text.charAt(i);
        if (c == habits.messageEnd()) {
          hear(line.toString());
          line.setLength(0);
        } else if (c != '\r' && c != '\n' && line.length() < MAX_LINE) {
          line.append(c);
        }
      }
    }
  }

  /** A message that comes too soon after the one before is lost. */
  private void hear(String line) throws IOException {
    long sinceNanos = clock.nanos() - lastEndNanos;
    if (!spoken || sinceNanos >= Math.round(habits.deafSeconds() * 1e9)) {
      Waits.nanos(Math.round(line.length() * habits.secondsPerByte() * 1e9));
      spoken = true;
      lastEndNanos = clock.nanos();
      answer(line);
    }
  }

  private void answer(String line) throws IOException {
    long now = clock.nanos();
    String reply = service.receive(line, now);
    long due = now;
    for (Transmission transmission : wire.transmit(line, reply, now)) {
      due += Math.round(transmission.pauseSeconds() * 1e9);
      Waits.nanos(due - clock.nanos());
      // noted before it is sent, since the other side may answer before this thread runs again
      lastEndNanos = clock.nanos();
      out.write(transmission.bytes());
      out.flush();
    }
  }
}
