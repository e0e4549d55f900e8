package railglow.supply;

import java.lang.management.ManagementFactory;
import java.util.ArrayList;
import java.util.List;
import railglow.live.LivePage;
import railglow.observed.Frame;
import railglow.observed.OutputState;
import railglow.run.RunProgress;
import railglow.thermal.CountSamples;
import railglow.thermal.Look;
import railglow.thermal.Plane;
import railglow.time.Step;

/**
 * The run's own reduction at 640 x 512 pixels and 60 Hz, with a page beside it that is told of
 * every frame, ten states a second, and a look every two seconds.
 */
final class PageLoad implements Step {
  private static final int WIDTH = 640;
  private static final int HEIGHT = 512;
  private static final int FRAMES_A_STATE = 6;
  private static final int FRAMES_A_LOOK = 120;
  private final FrameLoad reduction;
  private final LivePage page;
  private final Frame frame;
  private final Look look;
  private final List<Double> lateMillis = new ArrayList<>();
  private final long startNanos;
  private long number;
  private long dueNanos;
  private long cpuNanos;

  PageLoad(long startNanos, LivePage page) {
    this.startNanos = startNanos;
    this.page = page;
    this.reduction = new FrameLoad(startNanos);
    this.frame = new Frame(ramp());
    Plane plane = new Plane(WIDTH, HEIGHT);
    this.look = new Look(1, List.of(), null, 0.01, plane, plane, plane, tau -> null);
    this.dueNanos = startNanos;
  }

  private static CountSamples ramp() {
    CountSamples samples = new CountSamples(WIDTH, HEIGHT);
    for (int i = 0; i < samples.counts().length; i++) {
      samples.counts()[i] = (short) (29_500 + i % WIDTH);
    }
    return samples;
  }

  @Override
  public long step(long nowNanos) {
    synchronized (this) {
      lateMillis.add((nowNanos - dueNanos) / 1e6);
    }
    frame.begin(number, nowNanos);
    page.onFrame(frame);
    if (number % FRAMES_A_STATE == 0) {
      page.onProgress(progress(nowNanos));
    }
    if (number % FRAMES_A_LOOK == 0) {
      page.onLook(look);
    }
    number++;
    dueNanos = reduction.step(nowNanos);
    cpuNanos = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
    return dueNanos;
  }

  private RunProgress progress(long nowNanos) {
    double seconds = (nowNanos - startNanos) * 1e-9;
    return new RunProgress(
        nowNanos, 1, 600, seconds, 1200, OutputState.ON, 1, 0.145, 24.5, 0.3, null, "K");
  }

  /** How late the steps began; forgets them. */
  synchronized List<Double> takeLateMillis() {
    List<Double> taken = List.copyOf(lateMillis);
    lateMillis.clear();
    return taken;
  }

  /** Processor time of this thread so far. */
  long cpuNanos() {
    return cpuNanos;
  }
}
