package railglow.time;

import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.Condition;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.BiConsumer;

/**
 * The one thread that runs one {@link Step} and waits between its calls. {@link #wake} and {@link
 * #close} may be called from any thread; the step itself only ever runs on the runner's thread.
 */
public final class StepRunner implements AutoCloseable {
  private final String name;
  private final Step step;
  private final MonotonicClock clock;
  private final BiConsumer<String, Throwable> onFailure;
  private final Thread thread;
  private final ReentrantLock lock = new ReentrantLock();
  private final Condition changed = lock.newCondition();
  private boolean woken;
  private volatile boolean closing;

  /**
   * @param name the thread's name: its role
   * @param onFailure called on the runner's thread with its name when the step threw; the loop then
   *     ends
   */
  public StepRunner(
      String name, Step step, MonotonicClock clock, BiConsumer<String, Throwable> onFailure) {
    this.name = name;
    this.step = step;
    this.clock = clock;
    this.onFailure = onFailure;
    this.thread = new Thread(this::loop, name);
    this.thread.setDaemon(true);
  }

  public StepRunner start() {
    thread.start();
    return this;
  }

  /** Ends the current wait, so that the step runs now. */
  public void wake() {
    lock.lock();
    try {
      woken = true;
      changed.signal();
    } finally {
      lock.unlock();
    }
  }

  public boolean isRunning() {
    return thread.isAlive();
  }

  /**
   * Waits for the step to finish by itself.
   *
   * @return whether it did within the time
   */
  public boolean awaitEnd(long timeoutNanos) {
    boolean interrupted = false;
    try {
      TimeUnit.NANOSECONDS.timedJoin(thread, Math.max(1, timeoutNanos));
    } catch (InterruptedException e) {
      interrupted = true;
    }
    if (interrupted) {
      Thread.currentThread().interrupt();
    }
    return !thread.isAlive();
  }

  /** Asks the loop to end after the step in progress and waits up to two seconds for it. */
  @Override
  public void close() {
    lock.lock();
    try {
      closing = true;
      changed.signal();
    } finally {
      lock.unlock();
    }
    if (Thread.currentThread() != thread && !awaitEnd(TimeUnit.SECONDS.toNanos(2))) {
      onFailure.accept(name, new IllegalStateException("the " + name + " thread did not end"));
    }
  }

  private void loop() {
    try {
      long next = clock.nanos();
      while (next != Step.FINISHED && waited(next)) {
        next = step.step(clock.nanos());
      }
    } catch (Throwable t) {
      onFailure.accept(name, t);
    }
  }

  /** Waiting takes a little memory: where there is none, the step is run without a wait. */
  private boolean waited(long nextNanos) {
    try {
      return waitUntil(nextNanos);
    } catch (OutOfMemoryError | IllegalMonitorStateException e) {
      // the second where the lock could not even be taken back for want of memory
      return !closing;
    }
  }

  /** Waits for the time, a wake-up or the close; false when closing. */
  private boolean waitUntil(long nextNanos) {
    lock.lock();
    try {
      while (!closing && !woken) {
        long left = nextNanos - clock.nanos();
        if (left <= 0) {
          break;
        }
        changed.awaitNanos(left);
      }
      woken = false;
      return !closing;
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return false;
    } finally {
      lock.unlock();
    }
  }
}
