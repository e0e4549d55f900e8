package railglow.scpi;

import java.util.ArrayDeque;
import java.util.Deque;

/**
 * An instrument's error queue: first in, first out. When it is full the last entry is replaced by
 * {@code -350,"Queue overflow"} and the older ones stay (SCPI-1999 volume 2, 21.8). Not
 * thread-safe.
 */
public final class ErrorQueue {
  private final int capacity;
  private final Deque<ErrorEntry> entries = new ArrayDeque<>();

  /**
   * @param capacity number of entries it holds, at least 2
   */
  public ErrorQueue(int capacity) {
    if (capacity < 2) {
      throw new IllegalArgumentException(
          "an error queue holds at least 2 entries, not " + capacity);
    }
    this.capacity = capacity;
  }

  public void add(ErrorEntry entry) {
    if (!entry.isError()) {
      return;
    }
    if (entries.size() == capacity) {
      entries.removeLast();
      entries.addLast(ErrorEntry.of(ScpiError.QUEUE_OVERFLOW));
    } else {
      entries.addLast(entry);
    }
  }

  /** Takes the oldest entry out; {@link ErrorEntry#NONE} when there is none. */
  public ErrorEntry next() {
    ErrorEntry oldest = entries.pollFirst();
    return oldest == null ? ErrorEntry.NONE : oldest;
  }

  public int size() {
    return entries.size();
  }

  public boolean isEmpty() {
    return entries.isEmpty();
  }

  public void clear() {
    entries.clear();
  }
}
