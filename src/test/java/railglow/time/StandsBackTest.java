package railglow.time;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.CompletableFuture;
import org.junit.jupiter.api.Test;

class StandsBackTest {
  /** The nice value in proc(5)'s line on a thread, counted after the name in brackets. */
  private static final int NICE = 16;

  private static final String NOT_GIVEN = "not given";

  @Test
  void onlyTheThreadThatAsksGetsTheLeastShare() throws Exception {
    assumeTrue(Files.exists(Path.of("/proc/thread-self")), "only Linux tells a thread's share");
    String before = niceOfThisThread();
    CompletableFuture<String> after = new CompletableFuture<>();
    Thread modest =
        new Thread(
            () -> {
              try {
                after.complete(StandsBack.now() ? niceOfThisThread() : NOT_GIVEN);
              } catch (IOException e) {
                after.completeExceptionally(e);
              }
            });
    modest.start();
    modest.join();
    assumeTrue(!after.get().equals(NOT_GIVEN), "this machine has no renice");
    assertEquals("19", after.get());
    assertEquals(before, niceOfThisThread());
  }

  private static String niceOfThisThread() throws IOException {
    String line = Files.readString(Path.of("/proc/thread-self/stat"));
    return line.substring(line.lastIndexOf(')') + 2).split(" ")[NICE];
  }
}
