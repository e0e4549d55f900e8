package railglow.link;

import java.io.IOException;
import java.time.Duration;
import java.util.Optional;
import java.util.concurrent.Future;
import java.util.function.Supplier;
import railglow.link.CannotOpenException.Reason;
import railglow.time.MonotonicClock;
import railglow.time.Waits;

/**
 * Bounds the calls of a {@link BlockingWay}: one thread reads and another writes, and a call that
 * does not end in time is left to them. A read that was left is waited for by the next one, so that
 * no byte is lost; a write that was left can only be ended by opening anew.
 *
 * <p>A short message to a line that takes it at once, and that has answered lately, is written by
 * the caller: waking another thread and being woken by it can each take a busy machine some
 * milliseconds, and the message may be the one that says off (decision 0087).
 */
final class BlockingPort implements BytePort {
  private static final long READY_NANOS = Duration.ofMillis(20).toNanos();
  private static final long CLOSE_MILLIS = 600;

  /** Written without an answer so far; far less than any driver holds. */
  private static final int MOST_UNANSWERED_BYTES = 1024;

  private final Supplier<BlockingWay> ways;
  private final Traits traits;
  private final String description;
  private final MonotonicClock clock;
  private Session session;
  private Thread closing;

  /** What lives from one opening to the next. */
  private static final class Session {
    private final BlockingWay way;
    private final BoundedCalls reads;
    private final BoundedCalls writes;
    private final byte[] buffer = new byte[4096];
    private Future<Integer> pendingRead;
    private Future<Boolean> lastWrite;
    private int unansweredBytes;
    private int from;
    private int to;

    Session(BlockingWay way, String description, MonotonicClock clock) {
      this.way = way;
      reads = new BoundedCalls("read-" + description, clock);
      writes = new BoundedCalls("write-" + description, clock);
    }
  }

  BlockingPort(
      Supplier<BlockingWay> ways, Traits traits, String description, MonotonicClock clock) {
    this.ways = ways;
    this.traits = traits;
    this.description = description;
    this.clock = clock;
  }

  @Override
  public Traits traits() {
    return traits;
  }

  @Override
  public void open(long timeoutNanos) throws LinkException {
    close();
    Session opening = new Session(ways.get(), description, clock);
    Thread before = closing;
    session = opening;
    try {
      Future<Boolean> opened =
          opening.writes.start(
              () -> {
                if (before != null) {
                  before.join();
                }
                opening.way.open();
                return true;
              });
      if (opening.writes.await(opened, timeoutNanos).isEmpty()) {
        throw new CannotOpenException(
            Reason.NO_ANSWER,
            description + " does not open: unplug it and plug it in again.",
            null);
      }
    } catch (LinkException e) {
      close();
      throw e;
    } catch (IOException e) {
      close();
      throw new CannotOpenException(
          Reason.OTHER, description + " can't be opened: " + e.getMessage(), e);
    }
  }

  @Override
  public int read(byte[] into, long timeoutNanos) throws LinkException {
    Session s = requireOpen();
    long deadline = clock.nanos() + timeoutNanos;
    while (s.from == s.to) {
      if (s.pendingRead == null) {
        if (timeoutNanos <= 0 && s.way.available() <= 0) {
          return 0;
        }
        s.pendingRead = s.reads.start(() -> s.way.read(s.buffer));
      }
      long left = Math.max(deadline - clock.nanos(), s.way.available() > 0 ? READY_NANOS : 0);
      Optional<Integer> length = await(s.reads, s.pendingRead, left);
      if (length.isEmpty()) {
        return 0;
      }
      s.pendingRead = null;
      if (length.get() < 0) {
        throw new LinkLostException(description + " is gone", null);
      }
      s.from = 0;
      s.to = length.get();
      s.unansweredBytes = s.to > 0 ? 0 : s.unansweredBytes;
      if (s.to == 0 && deadline - clock.nanos() <= 0) {
        return 0;
      }
    }
    int length = Math.min(into.length, s.to - s.from);
    System.arraycopy(s.buffer, s.from, into, 0, length);
    s.from += length;
    return length;
  }

  @Override
  public int write(byte[] bytes, long timeoutNanos) throws LinkException {
    Session s = requireOpen();
    if (isTakenAtOnce(s, bytes.length)) {
      s.unansweredBytes += bytes.length;
      writeAtOnce(s, bytes);
      return bytes.length;
    }
    byte[] copy = bytes.clone();
    s.lastWrite =
        s.writes.start(
            () -> {
              s.way.write(copy);
              return true;
            });
    if (await(s.writes, s.lastWrite, timeoutNanos).isEmpty()) {
      throw new LinkTimeoutException(
          description + " did not take the message in time: is its flow control right?");
    }
    return bytes.length;
  }

  private static boolean isTakenAtOnce(Session s, int length) {
    return s.unansweredBytes + length <= MOST_UNANSWERED_BYTES
        && (s.lastWrite == null || s.lastWrite.isDone())
        && s.way.takesAtOnce();
  }

  private void writeAtOnce(Session s, byte[] bytes) throws LinkException {
    try {
      s.way.write(bytes);
    } catch (IOException e) {
      throw broken(e);
    }
  }

  @Override
  public boolean writeWithoutMemory(ReadyMessage message) throws IOException {
    return session != null && session.way.writeWithoutMemory(message);
  }

  private <T> Optional<T> await(BoundedCalls calls, Future<T> call, long timeoutNanos)
      throws LinkException {
    try {
      return calls.await(call, timeoutNanos);
    } catch (IOException e) {
      throw broken(e);
    }
  }

  private LinkException broken(IOException e) {
    return e instanceof LinkException link
        ? link
        : new LinkLostException(description + " broke: " + e.getMessage(), e);
  }

  private Session requireOpen() throws LinkLostException {
    if (session == null) {
      throw new LinkLostException(description + " is not open", null);
    }
    return session;
  }

  @Override
  public void idle(long nanos) {
    Waits.nanos(nanos);
  }

  @Override
  public String description() {
    return description;
  }

  /** Waits a moment at most; a device that hangs while closing is left to its own thread. */
  @Override
  public void close() {
    if (session != null) {
      Session ending = session;
      session = null;
      ending.reads.close();
      ending.writes.close();
      closing = new Thread(ending.way::close, "close-" + description);
      closing.setDaemon(true);
      closing.start();
      try {
        // so that the device is free for whoever opens it next, where it does not hang
        closing.join(CLOSE_MILLIS);
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
      }
    }
  }
}
