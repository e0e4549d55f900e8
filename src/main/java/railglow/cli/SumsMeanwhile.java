package railglow.cli;

import java.io.IOException;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;
import railglow.journal.Checksums;
import railglow.journal.Damage;
import railglow.journal.RunFolder;

/**
 * Compares a run folder with its check sums on a thread of its own, while the run is replayed: it
 * reads ahead of the replay what that will read, and the end of a replay keeps one core busy only.
 */
final class SumsMeanwhile {
  private final FutureTask<List<Damage>> sums;

  private SumsMeanwhile(RunFolder folder) {
    sums =
        new FutureTask<>(
            () -> Checksums.areIn(folder) ? Checksums.check(folder) : List.<Damage>of());
  }

  static SumsMeanwhile begin(RunFolder folder) {
    SumsMeanwhile meanwhile = new SumsMeanwhile(folder);
    Thread thread = new Thread(meanwhile.sums, "check-sums");
    thread.setDaemon(true);
    thread.start();
    return meanwhile;
  }

  /**
   * What does not fit, once all is read; empty for a folder without stored sums.
   *
   * @throws IOException when the files can't be read
   */
  List<Damage> damages() throws IOException, InterruptedException {
    try {
      return sums.get();
    } catch (ExecutionException e) {
      if (e.getCause() instanceof IOException io) {
        throw io;
      }
      throw new IllegalStateException(e.getCause());
    }
  }
}
