package railglow.camera;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicLong;
import railglow.camera.motion.MotionWatch;
import railglow.observed.Frame;
import railglow.thermal.Samples;
import railglow.time.StepRunner;
import railglow.time.SystemClock;

/** What was seen of one stream: read on one thread; clock, marks, motion and hottest on another. */
final class KeptUp {
  private static final int WAITING = 120;
  private static final int LOOKS_AT_MEMORY = 10;
  private static final Path STATUS = Path.of("/proc/self/status");
  private final int seconds;
  private long used;
  private long droppedByUs;
  private long missing;
  private int mostWaiting;
  private long busyNanos;
  private long longestAwayNanos;
  private double othersShare;
  private final List<Long> heapBytes = new ArrayList<>();
  private final List<Long> residentBytes = new ArrayList<>();

  private KeptUp(int seconds) {
    this.seconds = seconds;
  }

  /** Watches so many seconds' worth of frames, or until the stream has ended. */
  static KeptUp watch(String address, CameraDescriptor camera, int seconds) throws IOException {
    KeptUp seen = new KeptUp(seconds);
    SystemClock time = SystemClock.INSTANCE;
    TimedSource source = new TimedSource(FrameSources.open(address, camera, time));
    FramePool pool = new FramePool(WAITING + 4, source::newSamples);
    FrameQueue queue = new FrameQueue(WAITING, () -> {});
    MachineShare machine = new MachineShare();
    try (CameraReader reader = new CameraReader(source, pool, queue);
        StepRunner runner =
            new StepRunner("camera-reader", reader, time, (name, failure) -> {}).start()) {
      seen.use(camera, source.newSamples(), pool, queue, runner);
      seen.droppedByUs = reader.framesDropped();
      seen.missing = reader.framesMissing();
      seen.othersShare = machine.others();
    }
    seen.longestAwayNanos = source.longestAwayNanos.get();
    return seen;
  }

  private void use(
      CameraDescriptor camera, Samples like, FramePool pool, FrameQueue queue, StepRunner reader)
      throws IOException {
    ThreadMXBean cpu = ManagementFactory.getThreadMXBean();
    SystemClock time = SystemClock.INSTANCE;
    ArrivalClock clock = ArrivalClock.live(camera);
    FrameMarks marks = new FrameMarks(camera, like);
    MotionWatch motion = new MotionWatch(like);
    HottestPixel hottest = new HottestPixel(camera.profile());
    long wanted = Math.round(seconds * camera.framesPerSecond());
    long deadline = time.nanos() + (seconds + 30) * 1_000_000_000L;
    while (used < wanted
        && time.nanos() - deadline < 0
        && (reader.isRunning() || queue.waitingCount() > 0)) {
      mostWaiting = Math.max(mostWaiting, queue.waitingCount());
      Frame frame = queue.poll();
      if (frame == null) {
        reader.awaitEnd(2_000_000);
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
      if (used % (wanted / LOOKS_AT_MEMORY) == 0) {
        lookAtMemory();
      }
    }
  }

  private void lookAtMemory() throws IOException {
    System.gc();
    heapBytes.add(ManagementFactory.getMemoryMXBean().getHeapMemoryUsage().getUsed());
    if (Files.isReadable(STATUS)) {
      String line =
          Files.readAllLines(STATUS).stream()
              .filter(text -> text.startsWith("VmRSS:"))
              .findFirst()
              .orElseThrow();
      residentBytes.add(1024 * Long.parseLong(line.replaceAll("[^0-9]", "")));
    }
  }

  int seconds() {
    return seconds;
  }

  long used() {
    return used;
  }

  /** For want of a buffer or a place in the queue. */
  long droppedByUs() {
    return droppedByUs;
  }

  /** By the gaps in their numbers: they never came. */
  long missing() {
    return missing;
  }

  int mostWaiting() {
    return mostWaiting;
  }

  double processorMillisPerFrame() {
    return busyNanos / 1e6 / used;
  }

  /** The longest time from the end of one read to the beginning of the next. */
  double longestAwayMillis() {
    return longestAwayNanos / 1e6;
  }

  /** Of the machine's processors, while this went on. */
  double othersShare() {
    return othersShare;
  }

  /** In use after a collection, at even times. */
  List<Long> heapBytes() {
    return heapBytes;
  }

  /** Of the whole process in memory, at the same times; empty where the kernel does not say. */
  List<Long> residentBytes() {
    return residentBytes;
  }

  /** Tells how long its reader was away from it. */
  private static final class TimedSource implements FrameSource {
    private final FrameSource inner;
    private final AtomicLong longestAwayNanos = new AtomicLong();
    private long lastEndNanos;
    private boolean begun;

    TimedSource(FrameSource inner) {
      this.inner = inner;
    }

    @Override
    public Outcome read(Frame frame, long timeoutNanos) throws IOException {
      if (begun) {
        longestAwayNanos.accumulateAndGet(System.nanoTime() - lastEndNanos, Math::max);
      }
      Outcome outcome = inner.read(frame, timeoutNanos);
      begun = true;
      lastEndNanos = System.nanoTime();
      return outcome;
    }

    @Override
    public String description() {
      return inner.description();
    }

    @Override
    public Samples newSamples() {
      return inner.newSamples();
    }

    @Override
    public Optional<String> lastTrouble() {
      return inner.lastTrouble();
    }

    @Override
    public void close() {
      inner.close();
    }
  }
}
