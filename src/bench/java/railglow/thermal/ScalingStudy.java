package railglow.thermal;

import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.util.Arrays;
import java.util.Locale;

/** Prints how processor time grows with pixels, frames, cycles and widths; one thread. */
public final class ScalingStudy {
  private static final ThreadMXBean THREADS = ManagementFactory.getThreadMXBean();
  private static final int ROUNDS = 25;

  private ScalingStudy() {}

  public static void main(String[] args) {
    // so that the first lines do not measure the compiler
    for (int k = 0; k < 4; k++) {
      look(256, 192, 5, 20);
      frames(1000);
    }
    System.out.println("| what grows | to | cycle ms | look ms | per unit, against the first |");
    System.out.println("|---|---|---|---|---|");
    double first = 0;
    for (int[] size : new int[][] {{160, 120}, {256, 192}, {384, 288}, {640, 512}, {1024, 768}}) {
      double[] ms = look(size[0], size[1], 5, 20);
      double each = (ms[0] + ms[1]) / (size[0] * size[1]);
      first = first == 0 ? each : first;
      line("pixels", size[0] + " x " + size[1], ms, each / first);
    }
    first = 0;
    for (int widths = 1; widths <= 5; widths++) {
      double[] ms = look(256, 192, widths, 20);
      double each = (ms[0] + ms[1]) / widths;
      first = first == 0 ? each : first;
      line("widths", String.valueOf(widths), ms, each / first);
    }
    first = 0;
    for (int cycles : new int[] {5, 20, 80}) {
      double[] ms = look(256, 192, 5, cycles);
      first = first == 0 ? ms[0] + ms[1] : first;
      line("cycles before", String.valueOf(cycles), ms, (ms[0] + ms[1]) / first);
    }
    System.out.println();
    System.out.println("| frames in a quarter | ms | per frame, against the first |");
    System.out.println("|---|---|---|");
    first = 0;
    for (int frames : new int[] {10, 30, 100, 300, 1000}) {
      double ms = frames(frames);
      first = first == 0 ? ms / frames : first;
      System.out.printf(
          Locale.ROOT, "| %d | %.2f | %.2f |%n", frames, ms, ms / frames / first);
    }
  }

  private static void line(String what, String to, double[] ms, double ratio) {
    System.out.printf(
        Locale.ROOT, "| %s | %s | %.1f | %.1f | %.2f |%n", what, to, ms[0], ms[1], ratio);
  }

  /** Least processor time of a cycle taken in and of a look, over rounds after some cycles. */
  private static double[] look(int width, int height, int widths, int cycles) {
    DetectionSettings usual = DetectionSettings.usual(2, 0, 0.05, 4, cycles + ROUNDS);
    DetectionSettings settings =
        new DetectionSettings(
            2,
            0,
            0.05,
            4,
            cycles + ROUNDS,
            Arrays.copyOf(usual.filterSigmasPixels(), widths),
            usual.bodyTimeConstantsSeconds());
    Detector detector = new Detector(settings, width, height);
    WhiteCycles source = new WhiteCycles(width, height, 0.014, 1);
    double[] least = {Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY};
    for (int k = 0; k < cycles + ROUNDS; k++) {
      QuarterMeans q = source.next();
      long start = THREADS.getCurrentThreadCpuTime();
      detector.addCycle(q);
      long middle = THREADS.getCurrentThreadCpuTime();
      if (k >= cycles) {
        detector.look();
        least[0] = Math.min(least[0], (middle - start) / 1e6);
        least[1] = Math.min(least[1], (THREADS.getCurrentThreadCpuTime() - middle) / 1e6);
      }
    }
    return least;
  }

  private static double frames(int frames) {
    QuarterAccumulator sums = new QuarterAccumulator(256, 192, 0.01);
    CountSamples frame = new CountSamples(256, 192);
    double least = Double.POSITIVE_INFINITY;
    for (int round = 0; round < 30; round++) {
      long start = THREADS.getCurrentThreadCpuTime();
      for (int k = 0; k < frames; k++) {
        sums.add(1, frame);
      }
      least = Math.min(least, (THREADS.getCurrentThreadCpuTime() - start) / 1e6);
      sums.reset();
    }
    return least;
  }
}
