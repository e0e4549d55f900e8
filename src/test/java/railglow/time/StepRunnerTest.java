package railglow.time;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

@Timeout(value = 60, unit = TimeUnit.SECONDS)
class StepRunnerTest {
  private static final long MINUTE = 60_000_000_000L;
  private final List<Throwable> failures = new CopyOnWriteArrayList<>();

  private StepRunner runner(Step step) {
    return new StepRunner("loop", step, SystemClock.INSTANCE, (name, e) -> failures.add(e));
  }

  @Test
  void aStepThatThrowsEndsItsLoopAndIsTold() {
    StepRunner runner =
        runner(
                now -> {
                  throw new IllegalStateException("no more");
                })
            .start();

    assertTrue(runner.awaitEnd(MINUTE));

    assertEquals("no more", failures.get(0).getMessage());
  }

  @Test
  void aLastingLoopGoesOnWhateverIsThrown() {
    AtomicInteger calls = new AtomicInteger();
    Step failing =
        now -> {
          switch (calls.incrementAndGet()) {
            case 1 -> throw new OutOfMemoryError("no memory for the first");
            case 2 -> throw new NoClassDefFoundError("nor for the second");
            case 3 -> throw new IllegalMonitorStateException("nor for the third");
            default -> {
              return Step.FINISHED;
            }
          }
        };
    StepRunner runner =
        StepRunner.lasting("loop", failing, SystemClock.INSTANCE, (name, e) -> failures.add(e));

    runner.start();

    assertTrue(runner.awaitEnd(MINUTE));
    assertEquals(4, calls.get());
    assertTrue(failures.isEmpty());
  }

  @Test
  void aClockWithoutMemoryDoesNotEndALastingLoop() {
    AtomicInteger asked = new AtomicInteger();
    MonotonicClock failing =
        () -> {
          if (asked.incrementAndGet() < 5) {
            throw new OutOfMemoryError("between two steps");
          }
          return System.nanoTime();
        };
    StepRunner runner =
        StepRunner.lasting("loop", now -> Step.FINISHED, failing, (name, e) -> failures.add(e));

    runner.start();

    assertTrue(runner.awaitEnd(MINUTE));
  }

  @Test
  void aWakeUpWhileAStepRunsIsNotLost() throws InterruptedException {
    CountDownLatch running = new CountDownLatch(1);
    CountDownLatch woken = new CountDownLatch(1);
    AtomicInteger calls = new AtomicInteger();
    StepRunner runner =
        runner(
                now -> {
                  if (calls.incrementAndGet() == 2) {
                    return Step.FINISHED;
                  }
                  running.countDown();
                  await(woken);
                  return now + 1000 * MINUTE;
                })
            .start();
    running.await();

    runner.wake();
    woken.countDown();

    assertTrue(runner.awaitEnd(MINUTE));
    assertEquals(2, calls.get());
  }

  @Test
  void closingEndsAWaitOfHours() throws InterruptedException {
    CountDownLatch stepped = new CountDownLatch(1);
    StepRunner runner =
        runner(
                now -> {
                  stepped.countDown();
                  return now + 1000 * MINUTE;
                })
            .start();
    stepped.await();

    runner.close();

    assertFalse(runner.isRunning());
    assertTrue(failures.isEmpty());
  }

  @Test
  void aStepInProgressMayOutlastThePatienceAndThatIsNoFailure() throws InterruptedException {
    CountDownLatch running = new CountDownLatch(1);
    CountDownLatch released = new CountDownLatch(1);
    StepRunner runner =
        runner(
                now -> {
                  running.countDown();
                  await(released);
                  return now;
                })
            .start();
    running.await();

    assertFalse(runner.end(1_000_000));
    released.countDown();

    assertTrue(runner.end(MINUTE));
    assertTrue(failures.isEmpty());
  }

  private static void await(CountDownLatch latch) {
    try {
      latch.await();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
