package railglow.run.reduction;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Locale;
import java.util.function.Consumer;
import railglow.camera.FrameMarks;
import railglow.camera.motion.MotionWatch;
import railglow.observed.Frame;
import railglow.thermal.QuarterAccumulator;

/** Prints the processor time of each part of a frame's way, for two picture sizes. */
public final class FramePathStudy {
  private static final ThreadMXBean THREADS = ManagementFactory.getThreadMXBean();
  private static final int FRAMES = 900;

  private FramePathStudy() {}

  public static void main(String[] args) throws IOException {
    System.out.println("| part, ms of processor time per frame | 256 x 192 | 640 x 512 |");
    System.out.println("|---|---|---|");
    double[][] all = {measure(256, 192), measure(640, 512)};
    String[] names = {
      "decoding",
      "hottest pixel, lead-in",
      "hottest pixel",
      "marks",
      "motion, still scene",
      "mean of the lead-in",
      "sums of a quarter",
      "frame store",
      "all of a frame's way"
    };
    for (int i = 0; i < names.length; i++) {
      System.out.printf(Locale.ROOT, "| %s | %.3f | %.3f |%n", names[i], all[0][i], all[1][i]);
    }
  }

  private static double[] measure(int width, int height) throws IOException {
    Path folder = Files.createTempDirectory("frame-path");
    try (FramePath path = new FramePath(width, height, null);
        FramePath stored = new FramePath(width, height, folder)) {
      FrameMarks marks = new FrameMarks(path.like(), 60, 1);
      MotionWatch motion = new MotionWatch(path.like());
      LeadInMean[] leadIn = {new LeadInMean(width, height)};
      QuarterAccumulator quarters = new QuarterAccumulator(width, height, 0.01);
      double decoding = each(path, frame -> {});
      double keeping = each(stored, frame -> {});
      double[] parts = {
        decoding,
        each(path, path.hottest()::learn) - decoding,
        each(path, path.hottest()::look) - decoding,
        each(path, frame -> marks.mark(frame, frame.arrivalNanos())) - decoding,
        each(path, frame -> motion.look(frame, frame.arrivalNanos())) - decoding,
        each(
                path,
                frame -> {
                  if (frame.number() % 64 == 0) {
                    leadIn[0] = new LeadInMean(width, height);
                  }
                  leadIn[0].add(frame.samples());
                })
            - decoding,
        each(path, frame -> quarters.add(1 + (int) (frame.number() % 4), frame.samples()))
            - decoding,
        keeping - decoding,
        0
      };
      Path whole = Files.createTempDirectory("frame-path");
      try (FramePath all = new FramePath(width, height, whole)) {
        parts[8] = median(() -> all.next(), 2 * FRAMES);
      }
      Files.delete(whole.resolve("frames.rgf"));
      Files.delete(whole);
      return parts;
    } finally {
      Files.delete(folder.resolve("frames.rgf"));
      Files.delete(folder);
    }
  }

  private static double each(FramePath path, Consumer<Frame> part) {
    return median(
        () -> {
          Frame frame = path.decoded();
          part.accept(frame);
          path.keep(frame);
        },
        FRAMES);
  }

  /** Of the later half, when the code has been compiled. */
  private static double median(Runnable frame, int frames) {
    double[] millis = new double[frames];
    for (int k = 0; k < frames; k++) {
      long start = THREADS.getCurrentThreadCpuTime();
      frame.run();
      millis[k] = (THREADS.getCurrentThreadCpuTime() - start) / 1e6;
    }
    double[] late = Arrays.copyOfRange(millis, frames / 2, frames);
    Arrays.sort(late);
    return late[late.length / 2];
  }
}
