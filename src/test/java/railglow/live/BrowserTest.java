package railglow.live;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

class BrowserTest {
  @TempDir Path profile;

  /** Whoever writes on into the profile while it is deleted fails a test that is in order. */
  @Test
  @Timeout(60)
  void noneOfItsProcessesOutlivesItsClosing() throws Exception {
    assumeTrue(Browser.isInstalled(), "no Chromium at /usr/bin/chromium");
    for (int round = 0; round < 3; round++) {
      List<ProcessHandle> processes;
      try (Browser browser = new Browser(profile.resolve("round" + round))) {
        processes = ProcessHandle.current().descendants().toList();
        assertFalse(processes.isEmpty());
        browser.size(400, 300);
      }
      assertEquals(
          List.of(), processes.stream().filter(ProcessHandle::isAlive).toList(), "still alive");
    }
  }
}
