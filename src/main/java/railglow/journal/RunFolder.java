package railglow.journal;

import java.io.IOException;
import java.nio.file.FileStore;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * Where things are in a run folder. A value: asking for a path touches no disk. Thread-safe.
 *
 * @param root the folder itself
 */
public record RunFolder(Path root) {
  /** Kept free on the disk beyond what a run plans to write. */
  private static final long SPARE_BYTES = 16L << 20;

  /** The record of the run, one entry a line. */
  public Path journal() {
    return root.resolve("journal.jsonl");
  }

  /** Every frame that arrived, see {@link FrameStoreWriter}. */
  public Path frames() {
    return root.resolve("frames.rgf");
  }

  public Path findings() {
    return root.resolve("findings.json");
  }

  /** What was said on the links. */
  public Path transcript() {
    return root.resolve("transcript.txt");
  }

  /** Volts, amperes, watts, output state and hottest pixel against time. */
  public Path trace() {
    return root.resolve("trace.csv");
  }

  public Path report() {
    return root.resolve("report.html");
  }

  public Path planes() {
    return root.resolve("planes");
  }

  /**
   * A reduced plane.
   *
   * @param name for example {@code "in-phase"}
   */
  public Path plane(String name) {
    return planes().resolve(name + ".npy");
  }

  public Path pictures() {
    return root.resolve("pictures");
  }

  public Path picture(String name) {
    return pictures().resolve(name + ".png");
  }

  /** Copies of every file that the run was made with. */
  public Path used() {
    return root.resolve("used");
  }

  /** The folder's own name, by which the run is known. */
  public String name() {
    Path name = root.toAbsolutePath().normalize().getFileName();
    return name == null ? root.toString() : name.toString();
  }

  /**
   * Checks that this folder can take a run, before anything is switched on: makes it where it does
   * not exist, tries to write in it, and asks the disk for room.
   *
   * @param plannedBytes what the run may write at most
   * @throws JournalException with a sentence for the operator when it can't
   */
  public void prepare(long plannedBytes) throws JournalException {
    try {
      Files.createDirectories(root);
      Path probe = Files.createTempFile(root, ".probe", null);
      Files.write(probe, new byte[4096]);
      Files.delete(probe);
    } catch (IOException e) {
      throw new JournalException(
          "the run folder "
              + root
              + " can't be written ("
              + reason(e)
              + "); choose another folder or change its permissions",
          e);
    }
    long free;
    try {
      FileStore store = Files.getFileStore(root);
      free = store.getUsableSpace();
    } catch (IOException e) {
      throw new JournalException("the free space of " + root + " can't be read: " + reason(e), e);
    }
    if (free - SPARE_BYTES < plannedBytes) {
      throw new JournalException(
          "the disk of "
              + root
              + " has "
              + megabytes(free)
              + " MB free, but this run may write "
              + megabytes(plannedBytes)
              + " MB and "
              + megabytes(SPARE_BYTES)
              + " MB must stay free; make room or choose another folder");
    }
  }

  private static String reason(IOException e) {
    return e.getClass().getSimpleName().replace("Exception", "") + ": " + e.getMessage();
  }

  private static long megabytes(long bytes) {
    return (bytes + (1 << 20) - 1) >> 20;
  }
}
