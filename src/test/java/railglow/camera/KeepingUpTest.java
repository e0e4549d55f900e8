package railglow.camera;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import railglow.camera.motion.MotionWatch;
import railglow.observed.Frame;
import railglow.time.Step;
import railglow.time.StepRunner;
import railglow.time.SystemClock;

/**
 * 640 x 512 at 60 Hz from another process, in real time, with marks, clock, motion and hottest
 * pixel on a second thread. {@code -Drailglow.keepup.seconds=600} for ten minutes.
 */
class KeepingUpTest {
  private static final int W = 640;
  private static final int H = 512;
  private static final int RATE = 60;
  private static final int WAITING = 120;
  private static final int LOOKS_AT_MEMORY = 6;

  /** A look in every build: what each frame goes through, in short. */
  @Test
  void noFrameIsLostByUsInAFewSeconds() throws IOException {
    keepUp(3);
  }

  @Test
  @Tag("slow")
  void noFrameIsLostByUsAndTheMemoryStaysFlat() throws IOException {
    Seen seen = keepUp(Integer.getInteger("railglow.keepup.seconds", 20));
    Tables table =
        new Tables(
            "keeping-up",
            "seconds",
            "frames",
            "lost by us",
            "most waiting",
            "longest from read to read",
            "processor time per frame");
    table.row(
        "%d | %d | %d | %d | %.0f ms | %.1f ms",
        seen.seconds,
        seen.used,
        seen.dropped,
        seen.mostWaiting,
        seen.longestBetweenReadsNanos / 1e6,
        seen.busyNanos / 1e6 / seen.used);
    table.write();
    Tables memory = new Tables("keeping-up-memory", "after", "heap in use after a collection");
    for (int i = 0; i < seen.heapBytes.size(); i++) {
      memory.row(
          "%d s | %.1f MB", (i + 1) * seen.seconds / LOOKS_AT_MEMORY, seen.heapBytes.get(i) / 1e6);
    }
    memory.write();
    long first = seen.heapBytes.get(0);
    long last = seen.heapBytes.get(seen.heapBytes.size() - 1);
    assertTrue(last - first < 2_000_000, "the heap grew from " + first + " to " + last);
  }

  /** What was seen of one stream. */
  private static final class Seen {
    private int seconds;
    private long used;
    private long dropped;
    private int mostWaiting;
    private long busyNanos;
    private long longestBetweenReadsNanos;
    private final List<Long> heapBytes = new ArrayList<>();
  }

  private static Seen keepUp(int seconds) throws IOException {
    assumeTrue(Files.isExecutable(Path.of("/usr/bin/ffmpeg")), "no ffmpeg here");
    double load = ManagementFactory.getOperatingSystemMXBean().getSystemLoadAverage();
    int cores = Runtime.getRuntime().availableProcessors();
    assumeTrue(load < cores, "the machine is busy: load " + load + " on " + cores + " cores");
    CameraDescriptor camera = camera();
    String command =
        "exec:ffmpeg -nostdin -loglevel error -re -f lavfi -i testsrc=size=640x512:rate=60"
            + " -frames:v "
            + RATE * seconds
            + " -f rawvideo -pix_fmt gray16le -";
    SystemClock time = SystemClock.INSTANCE;
    FrameSource source = FrameSources.open(command, camera, time);
    FramePool pool = new FramePool(WAITING + 4, source::newSamples);
    FrameQueue queue = new FrameQueue(WAITING, () -> {});
    Seen seen = new Seen();
    seen.seconds = seconds;
    ThreadMXBean cpu = ManagementFactory.getThreadMXBean();
    ArrivalClock clock = ArrivalClock.live(camera);
    AtomicLong longest = new AtomicLong();
    try (CameraReader reader = new CameraReader(source, pool, queue);
        StepRunner runner =
            new StepRunner("camera-reader", timed(reader, longest), time, (name, failure) -> {})
                .start()) {
      FrameMarks marks = new FrameMarks(camera, source.newSamples());
      MotionWatch motion = new MotionWatch(source.newSamples());
      HottestPixel hottest = new HottestPixel(camera.profile());
      long deadline = time.nanos() + (seconds + 30) * 1_000_000_000L;
      while (time.nanos() - deadline < 0 && (runner.isRunning() || queue.waitingCount() > 0)) {
        seen.mostWaiting = Math.max(seen.mostWaiting, queue.waitingCount());
        Frame frame = queue.poll();
        if (frame == null) {
          runner.awaitEnd(2_000_000);
          continue;
        }
        long begin = cpu.getCurrentThreadCpuTime();
        long mid = clock.midExposureNanos(frame);
        marks.mark(frame, mid);
        motion.look(frame, mid);
        hottest.look(frame);
        seen.busyNanos += cpu.getCurrentThreadCpuTime() - begin;
        pool.giveBack(frame);
        seen.used++;
        if (seen.used % ((long) RATE * seconds / LOOKS_AT_MEMORY) == 0) {
          seen.heapBytes.add(heapAfterCollection());
        }
      }
      seen.dropped = reader.framesDropped();
      assertEquals(0, seen.dropped, "dropped by us; at most " + seen.mostWaiting + " waited");
      assertEquals((long) RATE * seconds, reader.framesArrived());
    }
    seen.longestBetweenReadsNanos = longest.get();
    assertEquals((long) RATE * seconds, seen.used);
    assertTrue(seen.mostWaiting < WAITING);
    return seen;
  }

  /** Notes the longest time from the beginning of one read to that of the next. */
  private static Step timed(Step reader, AtomicLong longest) {
    return new Step() {
      private long last;

      @Override
      public long step(long nowNanos) {
        if (last != 0) {
          longest.accumulateAndGet(nowNanos - last, Math::max);
        }
        last = nowNanos;
        return reader.step(nowNanos);
      }
    };
  }

  private static long heapAfterCollection() {
    System.gc();
    return ManagementFactory.getMemoryMXBean().getHeapMemoryUsage().getUsed();
  }

  private static CameraDescriptor camera() {
    return new CameraDescriptor(
        "large camera",
        RawLayout.packed(W, H, SampleType.U16, Endian.LITTLE),
        CountScale.linear(0.001, -10),
        RATE,
        0.05,
        0.03,
        0.01,
        Double.POSITIVE_INFINITY,
        1);
  }
}
