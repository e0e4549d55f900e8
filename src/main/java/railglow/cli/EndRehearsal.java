package railglow.cli;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ForkJoinPool;
import java.util.concurrent.ForkJoinTask;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.stream.Stream;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import railglow.board.Board;
import railglow.casebook.Catalogue;
import railglow.casebook.CatalogueException;
import railglow.casebook.RunSummary;
import railglow.journal.Checksums;
import railglow.journal.Entry;
import railglow.journal.Findings;
import railglow.journal.RunFolder;
import railglow.journal.RunHeader;
import railglow.report.Placement;
import railglow.report.RunReport;
import railglow.run.FindingsMaker;
import railglow.run.InventedEnd;
import railglow.run.RunPower;
import railglow.run.RunProgress;
import railglow.run.RunResults;
import railglow.run.RunWatcher;
import railglow.run.reduction.Reduced;
import railglow.thermal.inverse.PowerMap;
import railglow.time.StandsBack;

/**
 * Does once, while the second cycle runs, what is done when a run has ended, with invented findings
 * and in a folder that is thrown away. A program's first look, pictures and page take several times
 * as long as its later ones, and the operator waits for them (decision 0016). It takes what the run
 * leaves of the processor.
 *
 * <p>Nobody waits for a rehearsal: it ends at its next part when the run ends, and whatever fails
 * in it is left to fail at the end, where it is said.
 */
final class EndRehearsal implements RunWatcher, AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(EndRehearsal.class);

  /** No rehearsal with less memory to spare: the run comes first. */
  private static final long LEAST_BYTES = 96L << 20;

  /** On a busy machine a part may last long: its thread stands back for everybody else. */
  private static final long PATIENCE_SECONDS = 1;

  private final RunFolder run;
  private final Board board;
  private volatile RunHeader header;
  private volatile boolean over;
  private volatile Path thrownAway;
  private ForkJoinTask<?> rehearsal;

  /**
   * @param board null when none was given
   */
  EndRehearsal(RunFolder run, Board board) {
    this.run = run;
    this.board = board;
  }

  /** Takes note of the run's header and gives it back. */
  RunHeader noted(RunHeader made) {
    header = made;
    return made;
  }

  @Override
  public void onProgress(RunProgress progress) {}

  @Override
  public void onMessage(String sentence) {}

  @Override
  public synchronized void onCycle(Entry.Cycle cycle) {
    if (rehearsal == null && !over && bytesToSpare() >= LEAST_BYTES) {
      // a pool of one thread: what is done on all cores at the end is done on it too
      rehearsal = new ForkJoinPool(1).submit(this::rehearse);
    }
  }

  /** Says that the real end has come. */
  void giveWay() {
    over = true;
  }

  /** Returns when nothing of it is left but, at most, a thread that finds its folder gone. */
  @Override
  public void close() {
    giveWay();
    ForkJoinTask<?> begun;
    synchronized (this) {
      begun = rehearsal;
    }
    if (begun != null) {
      awaitOrThrowAway(begun);
    }
  }

  private void awaitOrThrowAway(ForkJoinTask<?> begun) {
    try {
      begun.get(PATIENCE_SECONDS, TimeUnit.SECONDS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    } catch (ExecutionException e) {
      LOG.warn("the rehearsal of the end failed", e);
    } catch (TimeoutException e) {
      LOG.debug("the rehearsal of the end is left behind");
      throwAway();
    }
  }

  private void throwAway() {
    Path folder = thrownAway;
    if (folder != null) {
      try {
        delete(folder);
      } catch (IOException | UncheckedIOException e) {
        LOG.debug("{} could not be removed: {}", folder, e.toString());
      }
    }
  }

  private static long bytesToSpare() {
    Runtime runtime = Runtime.getRuntime();
    return runtime.maxMemory() - runtime.totalMemory() + runtime.freeMemory();
  }

  private void rehearse() {
    StandsBack.now();
    try {
      Path folder = Files.createTempDirectory("railglow-rehearsal");
      thrownAway = folder;
      try {
        rehearseIn(new RunFolder(folder));
      } finally {
        delete(folder);
      }
    } catch (CancellationException e) {
      LOG.debug("the rehearsal gave way to the end itself");
    } catch (IOException | CatalogueException | RuntimeException | OutOfMemoryError e) {
      LOG.info("the end could not be rehearsed: {}", e.toString());
    }
  }

  private void rehearseIn(RunFolder folder) throws IOException, CatalogueException {
    Reduced reduced = InventedEnd.of(header);
    goOn();
    Optional<PowerMap> power = RunPower.map(header, reduced, board);
    Findings findings = FindingsMaker.make(header, reduced, board, power);
    goOn();
    Files.copy(run.journal(), folder.journal());
    copyUsedFiles(folder);
    RunResults.write(folder, reduced, findings, power);
    goOn();
    RunReport.write(folder, Placement.of(board, header.rail()));
    Summary.of(findings, folder);
    goOn();
    Checksums.write(folder);
    try (Catalogue catalogue = Catalogue.besideRuns(folder.root())) {
      catalogue.put(RunSummary.of(folder));
    }
  }

  private void goOn() {
    if (over) {
      throw new CancellationException();
    }
  }

  private void copyUsedFiles(RunFolder folder) throws IOException {
    try (Stream<Path> files = Files.walk(run.used())) {
      for (Path file : (Iterable<Path>) files::iterator) {
        Files.copy(file, folder.used().resolve(run.used().relativize(file).toString()));
      }
    }
  }

  private static void delete(Path folder) throws IOException {
    List<Path> all;
    try (Stream<Path> files = Files.walk(folder)) {
      all = files.sorted(Comparator.reverseOrder()).toList();
    }
    for (Path one : all) {
      Files.deleteIfExists(one);
    }
  }
}
