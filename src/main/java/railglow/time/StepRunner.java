package railglow.time;

import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.function.BiConsumer;

/**
 * The one thread that runs one {@link Step} and waits between its calls. {@link #wake} and {@link
 * #close} may be called from any thread; the step itself only ever runs on the runner's thread.
 *
 * <p>Waiting and waking hold no lock and take no memory: a thread that dies for want of memory must
 * not take the loop of another with it.
 */
public final class StepRunner implements AutoCloseable {
  /** Enough for the last step of a loop on a busy machine once nothing hurries any more. */
  public static final long LAST_STEP_NANOS = TimeUnit.SECONDS.toNanos(60);

  private final String name;
  private final Step step;
  private final MonotonicClock clock;
  private final BiConsumer<String, Throwable> onFailure;
  private final Thread thread;
  private final boolean lasting;
  private volatile boolean woken;
  private volatile boolean closing;

  /**
   * @param name the thread's name: its role
   * @param onFailure called on the runner's thread with its name when the step threw; the loop then
   *     ends
   */
  public StepRunner(
      String name, Step step, MonotonicClock clock, BiConsumer<String, Throwable> onFailure) {
    this(name, step, clock, onFailure, false);
  }

  private StepRunner(
      String name,
      Step step,
      MonotonicClock clock,
      BiConsumer<String, Throwable> onFailure,
      boolean lasting) {
    this.name = name;
    this.step = step;
    this.clock = clock;
    this.onFailure = onFailure;
    this.lasting = lasting;
    this.thread = new Thread(this::loop, name);
    this.thread.setDaemon(true);
  }

  /**
   * For a step that must go on whatever happens and deals with its failures itself: nothing thrown
   * ends the loop. Java may find at any instruction, within a step or between two, that there is no
   * memory left.
   *
   * @param onFailure called only when the loop does not end when it is closed
   */
  public static StepRunner lasting(
      String name, Step step, MonotonicClock clock, BiConsumer<String, Throwable> onFailure) {
    return new StepRunner(name, step, clock, onFailure, true);
  }

  public StepRunner start() {
    thread.start();
    return this;
  }

  /** Ends the current wait, so that the step runs now. */
  public void wake() {
    woken = true;
    LockSupport.unpark(thread);
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

  /**
   * Asks the loop to end after the step in progress and waits for it. What belongs to its thread
   * may be touched by another only when it did.
   *
   * @return whether it did within the time
   */
  public boolean end(long timeoutNanos) {
    closing = true;
    LockSupport.unpark(thread);
    return awaitEnd(timeoutNanos);
  }

  /** As {@link #end} with two seconds, and tells when they are not enough. */
  @Override
  public void close() {
    closing = true;
    if (Thread.currentThread() != thread && !end(TimeUnit.SECONDS.toNanos(2))) {
      onFailure.accept(name, new IllegalStateException("the " + name + " thread did not end"));
    }
  }

  private void loop() {
    boolean ended = false;
    while (!ended) {
      try {
        runSteps();
        ended = true;
      } catch (Throwable t) {
        ended = !lasting;
        if (ended) {
          onFailure.accept(name, t);
        }
      }
    }
  }

  private void runSteps() {
    long next = clock.nanos();
    while (next != Step.FINISHED && waitUntil(next)) {
      next = step.step(clock.nanos());
    }
  }

  /** Waits for the time, a wake-up, an interruption or the close; false after the last two. */
  private boolean waitUntil(long nextNanos) {
    long left = nextNanos - clock.nanos();
    while (left > 0 && !woken && !closing && !thread.isInterrupted()) {
      LockSupport.parkNanos(this, left);
      left = nextNanos - clock.nanos();
    }
    // before the step: what is asked for while it runs is done by the next one
    woken = false;
    return !closing && !thread.isInterrupted();
  }
}
