package railglow.time;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;

/**
 * Lets the calling thread run only when no other wants its processor. Java's own priorities do
 * nothing on Linux without a privilege; giving a thread less needs none. Stateless.
 */
public final class StandsBack {
  /** Linux: the calling thread, as PROCESS/task/THREAD (proc(5)). */
  private static final Path THIS_THREAD = Path.of("/proc/thread-self");

  private static final long PATIENCE_SECONDS = 2;

  private StandsBack() {}

  /**
   * Asks for the least share, for good.
   *
   * @return whether the system gave it; elsewhere nothing is changed
   */
  public static boolean now() {
    try {
      Path thread = Files.readSymbolicLink(THIS_THREAD).getFileName();
      Process renice =
          new ProcessBuilder("renice", "-n", "19", "-p", String.valueOf(thread))
              .redirectErrorStream(true)
              .redirectOutput(ProcessBuilder.Redirect.DISCARD)
              .start();
      return renice.waitFor(PATIENCE_SECONDS, TimeUnit.SECONDS) && renice.exitValue() == 0;
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return false;
    } catch (IOException | UnsupportedOperationException e) {
      return false;
    }
  }
}
