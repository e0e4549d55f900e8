package railglow.sim.wire;

import java.nio.charset.StandardCharsets;
import java.util.function.LongPredicate;
import railglow.link.MemoryPeer;
import railglow.link.MemoryPort;
import railglow.sim.fault.FaultSwitches;

/** The supply at the other end of a memory port. Not thread-safe. */
public final class LinePeer implements MemoryPeer {
  private final LineService service;
  private final ReplyWire wire;
  private final LongPredicate hangsUp;
  private final StringBuilder line = new StringBuilder();

  /**
   * @param hangsUp asked with the time before each line: whether the connection ends now
   */
  public LinePeer(
      LineService service, FaultSwitches faults, WireHabits habits, LongPredicate hangsUp) {
    this.service = service;
    this.hangsUp = hangsUp;
    wire = new ReplyWire(faults, habits);
  }

  @Override
  public void receive(String text, MemoryPort port) {
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (c == '\n') {
        answer(line.toString(), port);
        line.setLength(0);
      } else if (c != '\r') {
        line.append(c);
      }
    }
  }

  private void answer(String text, MemoryPort port) {
    long now = port.nowNanos();
    if (hangsUp.test(now)) {
      port.breakConnection();
      return;
    }
    double delay = 0;
    for (Transmission one : wire.transmit(text, service.receive(text, now), now)) {
      delay += one.pauseSeconds();
      port.deliver(new String(one.bytes(), StandardCharsets.ISO_8859_1), Math.round(delay * 1e9));
    }
  }
}
