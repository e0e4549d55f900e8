package railglow.run;

import java.io.IOException;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Consumer;
import railglow.journal.Entry;
import railglow.journal.FrameStoreWriter;
import railglow.journal.JournalWriter;
import railglow.observed.Frame;
import railglow.safety.StopCause;
import railglow.safety.StopLatch;
import railglow.time.Step;
import railglow.time.StepRunner;

/**
 * Writes the journal and the frame store. Posting is thread-safe and never blocks; a full queue or
 * a disk that refuses is a stop cause, never a silent loss. Runs on the scribe's thread only.
 */
public final class Scribe implements Step, AutoCloseable {
  private static final long IDLE_NANOS = 50_000_000L;
  private static final long SECOND = 1_000_000_000L;
  private static final int BATCH = 64;
  private final JournalWriter journal;
  private final FrameStoreWriter store;
  private final StopLatch latch;
  private final Consumer<Frame> giveBack;
  private final ArrayBlockingQueue<Entry> entries;
  private final ArrayBlockingQueue<Frame> frames;
  private final AtomicReference<String> failure = new AtomicReference<>();
  private volatile Runnable wake = () -> {};
  private volatile long lastStepNanos;

  /**
   * @param store null when no frame is ever given
   * @param giveBack takes a frame back to its pool once it is written
   * @param entryRoom how many entries may wait
   * @param frameRoom how many frames may wait
   */
  public Scribe(
      JournalWriter journal,
      FrameStoreWriter store,
      StopLatch latch,
      Consumer<Frame> giveBack,
      int entryRoom,
      int frameRoom,
      long nowNanos) {
    this.journal = journal;
    this.store = store;
    this.latch = latch;
    this.giveBack = giveBack;
    this.entries = new ArrayBlockingQueue<>(entryRoom);
    this.frames = new ArrayBlockingQueue<>(frameRoom);
    this.lastStepNanos = nowNanos;
  }

  /** A scribe for a record without frames. */
  public static Scribe withoutFrames(
      JournalWriter journal, StopLatch latch, int entryRoom, long nowNanos) {
    return new Scribe(journal, null, latch, frame -> {}, entryRoom, 1, nowNanos);
  }

  /** Sets how the scribe's thread is woken when something was posted. */
  public void wakeWith(Runnable newWake) {
    wake = newWake;
  }

  /** Takes an entry; any thread. */
  public void post(Entry entry) {
    if (!entries.offer(entry)) {
      fail(entry.nanos(), "the journal's waiting room is full");
    }
    wake.run();
  }

  /** Takes a frame and its ownership; any thread. */
  public void store(Frame frame) {
    if (!frames.offer(frame)) {
      fail(frame.arrivalNanos(), "the frame store's waiting room is full");
      giveBack.accept(frame);
    }
    wake.run();
  }

  @Override
  public long step(long nowNanos) {
    lastStepNanos = nowNanos;
    for (int i = 0; i < BATCH; i++) {
      Entry entry = entries.poll();
      Frame frame = frames.poll();
      if (entry == null && frame == null) {
        return nowNanos + IDLE_NANOS;
      }
      try {
        if (entry != null) {
          journal.append(entry);
        }
        if (frame != null) {
          store.append(frame);
        }
      } catch (IOException e) {
        fail(nowNanos, "the record can't be written: " + e.getMessage());
      } finally {
        if (frame != null) {
          giveBack.accept(frame);
        }
      }
    }
    return nowNanos;
  }

  /** How full the fuller of both waiting rooms is, 0 to 1; any thread. */
  public double backlogShare() {
    return Math.max(share(entries), share(frames));
  }

  /** Whether nothing waits to be written; any thread. */
  public boolean isIdle() {
    return entries.isEmpty() && frames.isEmpty();
  }

  /** Why something could not be written; null when all was; any thread. */
  public String failure() {
    return failure.get();
  }

  public long lastStepNanos() {
    return lastStepNanos;
  }

  /**
   * Ends its own thread, writes what waits and the closing entry, and ends both files. A thread
   * that is not back from the disk within the time keeps them, and that is told as a failure.
   *
   * @param own the thread that runs this
   */
  public void close(StepRunner own, long timeoutNanos, Entry.Closed closing, long nowNanos) {
    if (!own.end(timeoutNanos)) {
      fail(nowNanos, "the disk did not take it within " + timeoutNanos / SECOND + " s");
      return;
    }
    while (!isIdle()) {
      step(nowNanos);
    }
    try {
      closeStore();
      journal.append(closing);
    } catch (IOException e) {
      fail(nowNanos, "the record can't be closed: " + e.getMessage());
    }
    close();
  }

  @Override
  public void close() {
    try {
      closeStore();
      journal.close();
    } catch (IOException e) {
      failure.compareAndSet(null, "the record can't be closed: " + e.getMessage());
    }
  }

  private void closeStore() throws IOException {
    if (store != null) {
      store.close();
    }
  }

  private void fail(long nowNanos, String sentence) {
    failure.compareAndSet(null, sentence);
    latch.set(StopCause.JOURNAL_FAILED, nowNanos, sentence);
  }

  private static double share(ArrayBlockingQueue<?> queue) {
    int size = queue.size();
    return (double) size / (size + queue.remainingCapacity());
  }
}
