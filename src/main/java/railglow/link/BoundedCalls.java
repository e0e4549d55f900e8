package railglow.link;

import java.io.IOException;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import railglow.time.MonotonicClock;

/**
 * A thread for calls that may block without bound, so that their caller need not. A call that did
 * not end in time goes on; its result can be waited for again.
 */
final class BoundedCalls implements AutoCloseable {
  private final ExecutorService thread;
  private final MonotonicClock clock;

  BoundedCalls(String name, MonotonicClock clock) {
    this.clock = clock;
    thread =
        Executors.newSingleThreadExecutor(
            work -> {
              Thread t = new Thread(work, name);
              t.setDaemon(true);
              return t;
            });
  }

  <T> Future<T> start(Callable<T> call) {
    return thread.submit(call);
  }

  /**
   * Waits for a result; an interrupt does not shorten the wait and stays pending.
   *
   * @return empty if there is none in time
   * @throws IOException what the call threw
   */
  <T> Optional<T> await(Future<T> call, long timeoutNanos) throws IOException {
    long deadline = clock.nanos() + timeoutNanos;
    boolean interrupted = false;
    try {
      while (true) {
        try {
          long left = Math.max(0, deadline - clock.nanos());
          return Optional.of(call.get(left, TimeUnit.NANOSECONDS));
        } catch (InterruptedException e) {
          interrupted = true;
        }
      }
    } catch (TimeoutException e) {
      return Optional.empty();
    } catch (ExecutionException e) {
      if (e.getCause() instanceof IOException io) {
        throw io;
      }
      throw new IllegalStateException(e.getCause());
    } finally {
      if (interrupted) {
        Thread.currentThread().interrupt();
      }
    }
  }

  /** Returns at once; a call in progress is interrupted and left to end by itself. */
  @Override
  public void close() {
    thread.shutdownNow();
  }
}
