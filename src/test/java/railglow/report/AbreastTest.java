package railglow.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ForkJoinPool;
import java.util.concurrent.atomic.AtomicIntegerArray;
import org.junit.jupiter.api.Test;

class AbreastTest {
  @Test
  void everyJobIsDoneOnce() throws IOException {
    AtomicIntegerArray done = new AtomicIntegerArray(50);
    List<Abreast.Job> jobs = new ArrayList<>();
    for (int i = 0; i < done.length(); i++) {
      int job = i;
      jobs.add(() -> done.incrementAndGet(job));
    }

    Abreast.run(jobs);
    Abreast.run(List.of());

    for (int i = 0; i < done.length(); i++) {
      assertEquals(1, done.get(i));
    }
  }

  @Test
  void onOneThreadJobsAreDoneInTheirOrder() throws Exception {
    List<Integer> done = new ArrayList<>();
    List<Abreast.Job> jobs = new ArrayList<>();
    for (int i = 0; i < 50; i++) {
      int job = i;
      jobs.add(() -> done.add(job));
    }
    List<Integer> begun = new ArrayList<>();
    for (int i = 0; i < 50; i++) {
      begun.add(i);
    }

    // what is done in a pool stays in it, as the rehearsal of a run's end has it
    ForkJoinPool one = new ForkJoinPool(1);
    try {
      one.submit(
              () -> {
                Abreast.run(jobs);
                return null;
              })
          .get();
    } finally {
      one.shutdown();
    }

    assertEquals(begun, done);
  }

  @Test
  void theFailureOfAJobIsThatOfAll() {
    IOException full = new IOException("the disk is full");

    IOException raised =
        assertThrows(
            IOException.class,
            () ->
                Abreast.run(
                    List.of(
                        () -> {},
                        () -> {
                          throw full;
                        },
                        () -> {})));

    assertSame(full, raised);
  }
}
