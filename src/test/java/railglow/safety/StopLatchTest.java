package railglow.safety;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.concurrent.CountDownLatch;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;

class StopLatchTest {
  @Test
  void theFirstCauseIsKeptForGood() {
    StopLatch latch = new StopLatch();

    assertTrue(latch.set(StopCause.LINK_LOST, 1, "first"));
    assertFalse(latch.set(StopCause.OPERATOR_REQUEST, 2, "second"));

    assertEquals(new Stop(StopCause.LINK_LOST, 1, "first"), latch.stop().orElseThrow());
  }

  @Test
  void amongFourThreadsExactlyOneWinsAndTheListenerIsToldOnce() throws InterruptedException {
    for (int round = 0; round < 200; round++) {
      StopLatch latch = new StopLatch();
      AtomicInteger told = new AtomicInteger();
      latch.onSet(told::incrementAndGet);
      AtomicInteger winners = new AtomicInteger();
      CountDownLatch go = new CountDownLatch(1);
      Thread[] threads = new Thread[4];
      for (int i = 0; i < threads.length; i++) {
        int number = i;
        threads[i] =
            new Thread(
                () -> {
                  try {
                    go.await();
                  } catch (InterruptedException e) {
                    throw new IllegalStateException(e);
                  }
                  if (latch.set(StopCause.values()[number], number, "thread " + number)) {
                    winners.incrementAndGet();
                  }
                });
        threads[i].start();
      }
      go.countDown();
      for (Thread thread : threads) {
        thread.join();
      }
      Stop stop = latch.stop().orElseThrow();
      assertEquals(1, winners.get());
      assertEquals(1, told.get());
      assertEquals(StopCause.values()[(int) stop.nanos()], stop.cause());
    }
  }
}
