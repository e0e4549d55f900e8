package railglow.run.reduction;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import com.sun.management.ThreadMXBean;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A frame on its way from the camera's bytes to the frame store leaves no garbage: nothing but
 * cycles and looks allocate. Counted by the virtual machine for this very thread.
 */
class FramePathAllocationTest {
  private static final ThreadMXBean THREADS = (ThreadMXBean) ManagementFactory.getThreadMXBean();

  /** More than the 120 of a period, so that compiled code has seen every kind of frame. */
  private static final int WARM_UP = 4000;

  @Test
  void aFrameAllocatesNothingOnceTheCodeIsWarm(@TempDir Path folder) throws IOException {
    try (FramePath path = new FramePath(64, 48, folder)) {
      for (int k = 0; k < WARM_UP; k++) {
        path.next();
      }
      long withoutGarbage = 0;
      // Code that is compiled anew may allocate once: the best of a few periods counts.
      for (int period = 0; period < 6 && withoutGarbage < 119; period++) {
        withoutGarbage = framesWithoutGarbage(path);
      }
      assertNotEquals(0, path.looks(), "looks are made all the time");
      // In 120 frames one closes a cycle and looks; it must have been counted.
      assertEquals(119, withoutGarbage);
    }
  }

  private static long framesWithoutGarbage(FramePath path) {
    long frames = 0;
    for (int k = 0; k < 120; k++) {
      long before = allocated();
      path.next();
      frames += allocated() == before ? 1 : 0;
    }
    return frames;
  }

  private static long allocated() {
    return THREADS.getThreadAllocatedBytes(Thread.currentThread().getId());
  }
}
