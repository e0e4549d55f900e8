package railglow.report;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.concurrent.ForkJoinPool;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.IntStream;

/** Runs jobs that do not depend on each other on all cores. Stateless. */
final class Abreast {
  private Abreast() {}

  /** Something to be done that may fail as files do. */
  @FunctionalInterface
  interface Job {
    void run() throws IOException;
  }

  /**
   * Begins the jobs in their order, the longest had best come first, and returns when all are done.
   *
   * @throws IOException of one that failed; the others may then not have been begun
   */
  static void run(List<Job> jobs) throws IOException {
    AtomicInteger next = new AtomicInteger();
    int cores = ForkJoinPool.getCommonPoolParallelism() + 1;
    try {
      IntStream.range(0, Math.min(cores, jobs.size()))
          .parallel()
          .forEach(
              core -> {
                for (int i = next.getAndIncrement(); i < jobs.size(); i = next.getAndIncrement()) {
                  run(jobs.get(i));
                }
              });
    } catch (UncheckedIOException e) {
      throw e.getCause();
    }
  }

  private static void run(Job job) {
    try {
      job.run();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
