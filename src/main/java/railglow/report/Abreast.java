package railglow.report;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;

/** Runs jobs that do not depend on each other on all cores. Stateless. */
final class Abreast {
  private Abreast() {}

  /** Something to be done that may fail as files do. */
  @FunctionalInterface
  interface Job {
    void run() throws IOException;
  }

  /**
   * Returns when all are done.
   *
   * @throws IOException of one that failed; the others may then not have been begun
   */
  static void run(List<Job> jobs) throws IOException {
    try {
      jobs.parallelStream()
          .forEach(
              job -> {
                try {
                  job.run();
                } catch (IOException e) {
                  throw new UncheckedIOException(e);
                }
              });
    } catch (UncheckedIOException e) {
      throw e.getCause();
    }
  }
}
