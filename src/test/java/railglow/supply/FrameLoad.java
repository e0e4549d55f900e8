package railglow.supply;

import java.time.Instant;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import railglow.journal.CameraFacts;
import railglow.journal.Entry;
import railglow.journal.RunHeader;
import railglow.observed.Edge;
import railglow.observed.Frame;
import railglow.pulse.CycleWindow;
import railglow.pulse.PulseSequence;
import railglow.pulse.Timeline;
import railglow.run.reduction.Reduction;
import railglow.run.reduction.ReductionListener;
import railglow.safety.Envelope;
import railglow.thermal.CountSamples;
import railglow.thermal.DetectionSettings;
import railglow.thermal.Look;
import railglow.time.Step;

/** The run's own reduction, fed with 640 x 512 pixels at 60 Hz: the work beside the stops. */
final class FrameLoad implements Step, ReductionListener {
  private static final int WIDTH = 640;
  private static final int HEIGHT = 512;
  private static final long FRAME_NANOS = 16_666_667;
  private static final int NOISES = 5;
  private static final PulseSequence SEQUENCE =
      new PulseSequence("load", "load", 1, 0.5, 2, 4, 600, false, 1, 1, 0.05, 70, 30);
  private final Deque<Frame> free = new ArrayDeque<>();
  private final short[][] noises = new short[NOISES][WIDTH * HEIGHT];
  private final Reduction reduction;
  private final long startNanos;
  private long number;
  private long looks;

  FrameLoad(long startNanos) {
    this.startNanos = startNanos;
    SplittableRandom random = new SplittableRandom(3);
    for (short[] noise : noises) {
      for (int i = 0; i < noise.length; i++) {
        noise[i] = (short) (29_500 + random.nextInt(12));
      }
    }
    List<CycleWindow> cycles = new ArrayList<>();
    Timeline.of(SEQUENCE).cycles().forEach(cycle -> cycles.add(cycle.shifted(startNanos)));
    RunHeader header =
        new RunHeader(
            1,
            "load",
            Instant.EPOCH,
            startNanos,
            "load",
            "",
            "",
            SEQUENCE,
            Envelope.OPEN,
            new CameraFacts(
                "camera", WIDTH, HEIGHT, "uint16", 60, 0.01, -273.15, 0.05, 0.03, 0.01, true, false,
                1, 65_535),
            "",
            0.1,
            List.of(),
            DetectionSettings.usual(2.0, 0.01, 0.05, 4, 600),
            cycles,
            Map.of(),
            List.of());
    reduction = new Reduction(header, new CountSamples(WIDTH, HEIGHT), this);
    for (CycleWindow cycle : cycles) {
      reduction.onEdge(new Edge(2 * cycle.cycle(), true, 1, cycle.onNanos(), cycle.onNanos()));
      reduction.onEdge(
          new Edge(2 * cycle.cycle() + 1, false, 0, cycle.offNanos(), cycle.offNanos()));
    }
    reduction.allEdgesKnown();
    for (int i = 0; i < 80; i++) {
      free.add(new Frame(new CountSamples(WIDTH, HEIGHT)));
    }
  }

  @Override
  public long step(long nowNanos) {
    Frame frame = free.poll();
    if (frame != null) {
      short[] noise = noises[(int) (number % NOISES)];
      System.arraycopy(noise, 0, ((CountSamples) frame.samples()).counts(), 0, noise.length);
      frame.begin(number, nowNanos);
      reduction.onFrame(frame);
    }
    number++;
    return startNanos + number * FRAME_NANOS;
  }

  long frames() {
    return number;
  }

  long looks() {
    return looks;
  }

  @Override
  public void onCycle(Entry.Cycle cycle) {}

  @Override
  public void onLook(Look look, long nowNanos) {
    looks++;
  }

  @Override
  public void onReleased(Frame frame) {
    free.add(frame);
  }
}
