package railglow.camera;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import railglow.camera.motion.MotionWatch;
import railglow.observed.Frame;
import railglow.time.StepRunner;
import railglow.time.SystemClock;

/**
 * 640 x 512 at 60 Hz from another process, in real time, with marks, clock, motion and hottest
 * pixel on a second thread. {@code -Drailglow.keepup.seconds=600} for ten minutes.
 */
@Tag("slow")
class KeepingUpTest {
  private static final int W = 640;
  private static final int H = 512;
  private static final int RATE = 60;
  private static final int WAITING = 120;

  @Test
  void noFrameIsLostByUsAndTheMemoryStaysFlat() throws IOException {
    assumeTrue(Files.isExecutable(Path.of("/usr/bin/ffmpeg")), "no ffmpeg here");
    double load = ManagementFactory.getOperatingSystemMXBean().getSystemLoadAverage();
    int cores = Runtime.getRuntime().availableProcessors();
    assumeTrue(load < cores, "the machine is busy: load " + load + " on " + cores + " cores");
    int seconds = Integer.getInteger("railglow.keepup.seconds", 20);
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
    long used = 0;
    int most = 0;
    long busyNanos = 0;
    ThreadMXBean cpu = ManagementFactory.getThreadMXBean();
    ArrivalClock clock = ArrivalClock.live(camera);
    try (CameraReader reader = new CameraReader(source, pool, queue);
        StepRunner runner =
            new StepRunner("camera-reader", reader, time, (name, failure) -> {}).start()) {
      FrameMarks marks = new FrameMarks(camera, source.newSamples());
      MotionWatch motion = new MotionWatch(source.newSamples());
      HottestPixel hottest = new HottestPixel(camera.profile());
      long deadline = time.nanos() + (seconds + 30) * 1_000_000_000L;
      while (time.nanos() - deadline < 0 && (runner.isRunning() || queue.waitingCount() > 0)) {
        most = Math.max(most, queue.waitingCount());
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
        busyNanos += cpu.getCurrentThreadCpuTime() - begin;
        pool.giveBack(frame);
        used++;
      }
      Tables table =
          new Tables(
              "keeping-up",
              "seconds",
              "frames",
              "lost by us",
              "most waiting",
              "processor time per frame");
      table.row(
          "%d | %d | %d | %d | %.1f ms",
          seconds, used, reader.framesDropped(), most, busyNanos / 1e6 / used);
      table.write();
      assertEquals(0, reader.framesDropped(), "dropped by us; at most " + most + " waited");
      assertEquals((long) RATE * seconds, reader.framesArrived());
    }
    assertEquals((long) RATE * seconds, used);
    assertTrue(most < WAITING);
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
