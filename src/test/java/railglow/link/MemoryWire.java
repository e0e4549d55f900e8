package railglow.link;

import railglow.time.InventedClock;
import railglow.time.MonotonicClock;

final class MemoryWire implements TestWire {
  private final InventedClock clock = new InventedClock(-5_000_000_000L);
  private final MemoryPort port;

  MemoryWire(ScriptedInstrument instrument, BytePort.Traits traits) {
    port =
        new MemoryPort(
            clock,
            (text, to) -> {
              String answer = instrument.receive(text);
              if (instrument.isByteByByte()) {
                for (int i = 0; i < answer.length(); i++) {
                  to.deliver(answer.substring(i, i + 1), 1_000 * (i + 1));
                }
              } else {
                to.deliver(answer, 1_000_000);
              }
            },
            traits);
  }

  @Override
  public MemoryPort port() {
    return port;
  }

  @Override
  public MonotonicClock clock() {
    return clock;
  }

  @Override
  public void sendUnasked(String text) {
    port.deliver(text, 0);
  }

  @Override
  public void cut() {
    port.breakConnection();
  }

  @Override
  public void close() {
    port.close();
  }
}
