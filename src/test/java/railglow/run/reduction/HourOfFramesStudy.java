package railglow.run.reduction;

import com.sun.management.ThreadMXBean;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;

/**
 * Prints what memory a run holds while minutes of its frames go by, as fast as they can: all that
 * is ours of a frame's way, with a look after every cycle. The picture is small, for what could
 * grow grows with cycles.
 *
 * <p>Argument: minutes of frames, 60 unless stated.
 */
public final class HourOfFramesStudy {
  private static final int WIDTH = 64;
  private static final int HEIGHT = 48;
  private static final int ROWS = 6;

  private HourOfFramesStudy() {}

  public static void main(String[] args) throws IOException {
    int minutes = args.length > 0 ? Integer.parseInt(args[0]) : 60;
    int frames = (int) (minutes * 60 * FramePath.FRAMES_PER_SECOND);
    Path folder = Files.createTempDirectory("hour-of-frames");
    try (FramePath path = new FramePath(WIDTH, HEIGHT, folder, minutes * 30)) {
      System.out.println(
          "| minutes of frames | cycles looked at | heap in use, MiB | bytes allocated per frame, looks and all |");
      System.out.println("|---|---|---|---|");
      for (int row = 1; row <= ROWS; row++) {
        long before = allocated();
        for (int k = 0; k < frames / ROWS; k++) {
          path.next();
        }
        long each = (allocated() - before) / (frames / ROWS);
        System.gc();
        Runtime heap = Runtime.getRuntime();
        System.out.printf(
            Locale.ROOT,
            "| %d | %d | %.2f | %d |%n",
            minutes * row / ROWS,
            path.looks(),
            (heap.totalMemory() - heap.freeMemory()) / 1048576.0,
            each);
      }
    } finally {
      Files.delete(folder.resolve("frames.rgf"));
      Files.delete(folder);
    }
  }

  private static long allocated() {
    return ((ThreadMXBean) ManagementFactory.getThreadMXBean())
        .getThreadAllocatedBytes(Thread.currentThread().getId());
  }
}
