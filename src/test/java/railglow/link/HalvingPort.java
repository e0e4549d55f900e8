package railglow.link;

import java.io.IOException;
import java.util.Arrays;

/** Hands over only half of one message, as a line that stops in the middle. */
final class HalvingPort implements BytePort {
  private final BytePort port;
  private boolean halve;

  HalvingPort(BytePort port) {
    this.port = port;
  }

  void halveNext() {
    halve = true;
  }

  @Override
  public Traits traits() {
    return port.traits();
  }

  @Override
  public void open(long timeoutNanos) throws LinkException {
    port.open(timeoutNanos);
  }

  @Override
  public int write(byte[] bytes, long timeoutNanos) throws LinkException {
    if (!halve) {
      return port.write(bytes, timeoutNanos);
    }
    halve = false;
    return port.write(Arrays.copyOf(bytes, bytes.length / 2), timeoutNanos);
  }

  @Override
  public boolean writeWithoutMemory(ReadyMessage message) throws IOException {
    return port.writeWithoutMemory(message);
  }

  @Override
  public int read(byte[] into, long timeoutNanos) throws LinkException {
    return port.read(into, timeoutNanos);
  }

  @Override
  public void idle(long nanos) {
    port.idle(nanos);
  }

  @Override
  public String description() {
    return port.description();
  }

  @Override
  public void close() {
    port.close();
  }
}
