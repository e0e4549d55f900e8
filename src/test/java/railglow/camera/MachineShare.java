package railglow.camera;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Locale;

/**
 * Which part of the machine's processors others had for a time: neither this process nor those it
 * started. What is lost while others take the machine says nothing of the program.
 */
final class MachineShare {
  private static final Path STAT = Path.of("/proc/stat");

  /** The kernel counts in these, whatever its own clock. */
  private static final double TICKS_PER_SECOND = 100;

  private final int cores = Runtime.getRuntime().availableProcessors();
  private final long beganNanos = System.nanoTime();
  private final double busyBefore;
  private final double oursBefore;

  MachineShare() throws IOException {
    busyBefore = busySeconds();
    oursBefore = ourSeconds();
  }

  /** Since this was made, 0 to 1; 0 where the kernel does not say. */
  double others() throws IOException {
    double passed = (System.nanoTime() - beganNanos) * 1e-9;
    double theirs = busySeconds() - busyBefore - (ourSeconds() - oursBefore);
    return Math.max(0, Math.min(1, theirs / (cores * passed)));
  }

  /** Every processor's time that was not idle; what a host took away counts as used. */
  private static double busySeconds() throws IOException {
    if (!Files.isReadable(STAT)) {
      return 0;
    }
    String[] words = Files.readAllLines(STAT).get(0).trim().split(" +");
    double ticks = 0;
    for (int i = 1; i < Math.min(words.length, 9); i++) {
      boolean idle = i == 4 || i == 5;
      ticks += idle ? 0 : Long.parseLong(words[i]);
    }
    return ticks / TICKS_PER_SECOND;
  }

  private static double ourSeconds() {
    double own =
        ((com.sun.management.OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean())
                .getProcessCpuTime()
            * 1e-9;
    double children =
        ProcessHandle.current()
            .descendants()
            .map(child -> child.info().totalCpuDuration().orElse(Duration.ZERO))
            .mapToDouble(time -> time.toNanos() * 1e-9)
            .sum();
    return own + children;
  }

  static String percent(double share) {
    return String.format(Locale.ROOT, "%.0f %%", 100 * share);
  }
}
