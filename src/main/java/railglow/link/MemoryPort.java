package railglow.link;

import java.nio.charset.StandardCharsets;
import java.util.ArrayDeque;
import java.util.Deque;
import railglow.time.InventedClock;

/**
 * A port without a wire, in invented time: waiting moves the clock. Everything happens on the
 * calling thread, so that a run with it is the same each time. Not thread-safe.
 */
public final class MemoryPort implements BytePort {
  private record Parcel(byte[] bytes, long dueNanos) {}

  private final InventedClock clock;
  private final MemoryPeer peer;
  private final Traits traits;
  private final Deque<Parcel> underWay = new ArrayDeque<>();
  private boolean open;
  private boolean broken;
  private boolean writesStuck;
  private CannotOpenException refusal;

  /**
   * @param traits which kind of real port to resemble
   */
  public MemoryPort(InventedClock clock, MemoryPeer peer, Traits traits) {
    this.clock = clock;
    this.peer = peer;
    this.traits = traits;
  }

  /** Resembles a TCP connection. */
  public MemoryPort(InventedClock clock, MemoryPeer peer) {
    this(clock, peer, new Traits(true, false, false));
  }

  /**
   * Called by the peer: bytes for the other side, readable after a delay.
   *
   * @param text one character for each byte
   */
  public void deliver(String text, long delayNanos) {
    if (!text.isEmpty()) {
      underWay.addLast(
          new Parcel(text.getBytes(StandardCharsets.ISO_8859_1), clock.nanos() + delayNanos));
    }
  }

  /** The invented time. */
  public long nowNanos() {
    return clock.nanos();
  }

  /** Ends the connection, as a peer that closes it; it can be opened again. */
  public void breakConnection() {
    broken = true;
  }

  /** From now on opening fails with this; null lets it succeed again. */
  public void refuseToOpen(CannotOpenException exception) {
    refusal = exception;
  }

  /** While stuck, nothing that is written is handed over. */
  public void holdWrites(boolean stuck) {
    writesStuck = stuck;
  }

  @Override
  public Traits traits() {
    return traits;
  }

  @Override
  public void open(long timeoutNanos) throws LinkException {
    close();
    if (refusal != null) {
      throw refusal;
    }
    if (traits.freshAfterOpen()) {
      underWay.clear();
    }
    broken = false;
    open = true;
  }

  @Override
  public int write(byte[] bytes, long timeoutNanos) throws LinkException {
    requireOpen();
    if (writesStuck) {
      clock.advance(Math.max(0, timeoutNanos));
      return 0;
    }
    peer.receive(new String(bytes, StandardCharsets.ISO_8859_1), this);
    return bytes.length;
  }

  @Override
  public boolean writeWithoutMemory(ReadyMessage message) {
    if (open && !broken && !writesStuck) {
      peer.receive(new String(message.bytes(), StandardCharsets.ISO_8859_1), this);
    }
    return open && !broken && !writesStuck;
  }

  @Override
  public int read(byte[] into, long timeoutNanos) throws LinkException {
    long deadline = clock.nanos() + Math.max(0, timeoutNanos);
    Parcel first = underWay.peekFirst();
    if (first == null || first.dueNanos() - deadline > 0) {
      requireOpen();
      clock.advanceTo(deadline);
      return 0;
    }
    if (!open) {
      requireOpen();
    }
    clock.advanceTo(first.dueNanos());
    underWay.removeFirst();
    int length = Math.min(into.length, first.bytes().length);
    System.arraycopy(first.bytes(), 0, into, 0, length);
    if (length < first.bytes().length) {
      byte[] rest = java.util.Arrays.copyOfRange(first.bytes(), length, first.bytes().length);
      underWay.addFirst(new Parcel(rest, first.dueNanos()));
    }
    return length;
  }

  @Override
  public void idle(long nanos) {
    clock.advance(Math.max(0, nanos));
  }

  private void requireOpen() throws LinkLostException {
    if (!open || broken) {
      throw new LinkLostException(
          broken ? "the other end closed the connection" : "the port is not open", null);
    }
  }

  @Override
  public String description() {
    return "memory";
  }

  @Override
  public void close() {
    open = false;
  }
}
