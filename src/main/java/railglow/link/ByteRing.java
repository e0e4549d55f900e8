package railglow.link;

import java.util.concurrent.locks.Condition;
import java.util.concurrent.locks.ReentrantLock;

/**
 * Bytes handed from one thread to another through a bounded buffer: the writer waits while it is
 * full, the reader a bounded time while it is empty. Thread-safe for one writer and one reader.
 */
final class ByteRing {
  private final ReentrantLock lock = new ReentrantLock();
  private final Condition changed = lock.newCondition();
  private final byte[] bytes;
  private long written;
  private long taken;
  private boolean ended;
  private boolean closed;

  ByteRing(int capacity) {
    bytes = new byte[capacity];
  }

  /** Waits for room and adds all; false when the reader has closed. */
  boolean put(byte[] from, int length) {
    int done = 0;
    lock.lock();
    try {
      while (done < length) {
        int room = (int) (bytes.length - (written - taken));
        if (closed) {
          return false;
        }
        if (room == 0) {
          changed.awaitUninterruptibly();
          continue;
        }
        int at = (int) (written % bytes.length);
        int count = Math.min(Math.min(room, length - done), bytes.length - at);
        System.arraycopy(from, done, bytes, at, count);
        written += count;
        done += count;
        changed.signalAll();
      }
      return !closed;
    } finally {
      lock.unlock();
    }
  }

  /** No more will be put. */
  void end() {
    lock.lock();
    try {
      ended = true;
      changed.signalAll();
    } finally {
      lock.unlock();
    }
  }

  /** The reader wants no more; a waiting writer goes free. */
  void close() {
    lock.lock();
    try {
      closed = true;
      changed.signalAll();
    } finally {
      lock.unlock();
    }
  }

  /** How many bytes were taken, 0 when none came in time, -1 after the last one. */
  int take(byte[] into, int offset, int length, long timeoutNanos) {
    lock.lock();
    try {
      long left = timeoutNanos;
      while (written == taken && !ended && !closed && left > 0) {
        left = changed.awaitNanos(left);
      }
      if (closed || written == taken) {
        return ended || closed ? IncomingBytes.ENDED : 0;
      }
      int at = (int) (taken % bytes.length);
      int ready = (int) Math.min(length, written - taken);
      int count = Math.min(ready, bytes.length - at);
      System.arraycopy(bytes, at, into, offset, count);
      taken += count;
      changed.signalAll();
      return count;
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return 0;
    } finally {
      lock.unlock();
    }
  }
}
