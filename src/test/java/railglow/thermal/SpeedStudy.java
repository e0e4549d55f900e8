package railglow.thermal;

import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.util.Arrays;
import java.util.Locale;

/** Prints processor time per cycle and per look, and the heap of a run, for two picture sizes. */
public final class SpeedStudy {
  private SpeedStudy() {}

  public static void main(String[] args) {
    System.out.println(
        "| picture | frame ms | cycle ms | look ms | look with a source ms | heap MiB |");
    System.out.println("|---|---|---|---|---|---|");
    line(256, 192);
    line(640, 512);
  }

  private static void line(int width, int height) {
    ThreadMXBean threads = ManagementFactory.getThreadMXBean();
    double[][] times = new double[3][];
    double frame = frameMillis(threads, width, height);
    long heap = 0;
    for (int strong = 0; strong < 2; strong++) {
      WhiteCycles cycles = new WhiteCycles(width, height, 0.014, 1);
      if (strong == 1) {
        cycles.with(new WhiteCycles.Source(100, 80, 2, 0.05, 0), 0, 2);
      }
      Detector detector = new Detector(DetectionSettings.usual(2, 0, 0.05, 4, 30), width, height);
      double[] add = new double[30];
      double[] look = new double[30];
      for (int k = 0; k < 30; k++) {
        QuarterMeans q = cycles.next();
        long start = threads.getCurrentThreadCpuTime();
        detector.addCycle(q);
        long middle = threads.getCurrentThreadCpuTime();
        detector.look();
        add[k] = (middle - start) / 1e6;
        look[k] = (threads.getCurrentThreadCpuTime() - middle) / 1e6;
      }
      System.gc();
      Runtime runtime = Runtime.getRuntime();
      heap = (runtime.totalMemory() - runtime.freeMemory()) >> 20;
      times[0] = add;
      times[1 + strong] = look;
    }
    System.out.printf(
        Locale.ROOT,
        "| %d x %d | %.3f | %.1f | %.1f | %.1f | %d |%n",
        width,
        height,
        frame,
        median(times[0]),
        median(times[1]),
        median(times[2]),
        heap);
  }

  private static double frameMillis(ThreadMXBean threads, int width, int height) {
    QuarterAccumulator sums = new QuarterAccumulator(width, height, 0.01);
    CountSamples frame = new CountSamples(width, height);
    long start = 0;
    for (int k = 0; k < 1200; k++) {
      if (k == 200) {
        start = threads.getCurrentThreadCpuTime();
      }
      sums.add(1 + k % 4, frame);
    }
    return (threads.getCurrentThreadCpuTime() - start) / 1e6 / 1000;
  }

  private static double median(double[] values) {
    double[] late = Arrays.copyOfRange(values, 15, 30);
    Arrays.sort(late);
    return late[late.length / 2];
  }
}
