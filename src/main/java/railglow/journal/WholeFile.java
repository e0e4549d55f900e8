package railglow.journal;

import java.io.IOException;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.concurrent.atomic.AtomicLong;

/**
 * Writes a file so that under its name there is always either the old content or the whole new one:
 * into a neighbour in the same folder, then renamed. Stateless and thread-safe.
 */
public final class WholeFile {
  private static final AtomicLong COUNT = new AtomicLong();

  private WholeFile() {}

  /** Makes the folder where there is none. */
  public static void write(Path file, byte[] bytes) throws IOException {
    Path folder = file.toAbsolutePath().getParent();
    Files.createDirectories(folder);
    // not a temporary file of the system: those can be read by their owner alone
    Path neighbour =
        folder.resolve(
            "."
                + file.getFileName()
                + "."
                + ProcessHandle.current().pid()
                + "-"
                + COUNT.incrementAndGet()
                + ".part");
    try {
      Files.write(neighbour, bytes);
      try {
        Files.move(neighbour, file, StandardCopyOption.ATOMIC_MOVE);
      } catch (AtomicMoveNotSupportedException e) {
        Files.move(neighbour, file, StandardCopyOption.REPLACE_EXISTING);
      }
    } finally {
      Files.deleteIfExists(neighbour);
    }
  }
}
