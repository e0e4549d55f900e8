package railglow.sim;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import railglow.journal.CameraFacts;
import railglow.journal.RunHeader;
import railglow.observed.Edge;
import railglow.observed.Frame;
import railglow.pulse.CycleWindow;
import railglow.pulse.PulseSequence;
import railglow.pulse.Timeline;
import railglow.run.reduction.DeafListener;
import railglow.run.reduction.LooksMade;
import railglow.run.reduction.Reduced;
import railglow.run.reduction.Reduction;
import railglow.safety.Envelope;
import railglow.thermal.CountSamples;
import railglow.thermal.DetectionSettings;
import railglow.thermal.Look;

/**
 * A run in invented time through the reduction that every run goes through, with frames and edges
 * where they are wanted.
 *
 * @param framesPerSecond of the camera; frame n is taken at n over this
 * @param lagSeconds of the camera
 * @param phase by how much of a frame the first cycle begins after a frame
 * @param lateSeconds by which every edge is made later than planned
 */
record PhasedRun(
    int width,
    int height,
    double framesPerSecond,
    double lagSeconds,
    double phase,
    double lateSeconds,
    int cycles) {
  static final double PERIOD_SECONDS = 2;
  private static final double NANOS = 1e9;
  private static final long CONFIRMED_NANOS = 3_500_000;

  /** What the camera's detector gives. */
  interface Scene {
    /** The output changed. */
    void switched(boolean on, long nanos);

    /** The next frame. */
    void frameAt(long nanos, short[] counts);
  }

  private PulseSequence sequence() {
    return new PulseSequence(
        "t", "test", 1, 0.5, PERIOD_SECONDS, 5, cycles, false, 2.0, 0.5, 0.05, 70, 30);
  }

  /** The start of the first cycle. */
  double startSeconds() {
    return startNanos() / NANOS + sequence().leadInSeconds();
  }

  private long startNanos() {
    return Math.round((Math.ceil(framesPerSecond) + phase) / framesPerSecond * NANOS);
  }

  /** The look at all cycles, a pulse before which has begun to warm the scene. */
  Look look(Scene scene) {
    return look(scene, -2);
  }

  /** The look at all cycles, with no pulse before the first. */
  Look lookFromCold(Scene scene) {
    return look(scene, 0);
  }

  private Look look(Scene scene, int firstEdge) {
    Timeline timeline = Timeline.of(sequence());
    List<CycleWindow> windows = new ArrayList<>();
    timeline.cycles().forEach(cycle -> windows.add(cycle.shifted(startNanos())));
    Reduction reduction =
        new Reduction(
            header(windows),
            new CountSamples(width, height),
            new DeafListener(),
            LooksMade.UNTIL_CALLED);
    int edge = firstEdge;
    long end = startNanos() + timeline.endOffsetNanos();
    for (long n = 0; n / framesPerSecond * NANOS < end; n++) {
      long exposure = Math.round(n / framesPerSecond * NANOS);
      while (edge < timeline.edges().size() && switchNanos(timeline, edge) <= exposure) {
        boolean on = edge % 2 == 0;
        long at = switchNanos(timeline, edge);
        scene.switched(on, at);
        long commanded = at - CONFIRMED_NANOS / 2;
        reduction.onEdge(new Edge(edge++, on, on ? 1 : 0, commanded, commanded + CONFIRMED_NANOS));
      }
      short[] counts = new short[width * height];
      scene.frameAt(exposure, counts);
      Frame frame = new Frame(new CountSamples(width, height, counts));
      frame.begin(n, exposure);
      reduction.onFrame(frame);
    }
    Reduced reduced = reduction.finish();
    if (reduced.cyclesUsed() != cycles) {
      throw new IllegalStateException(
          reduced.cyclesUsed() + " cycles used: " + reduced.framesLeftOut());
    }
    return reduced.look();
  }

  /** Negative ones are of a pulse before the first cycle: the board has begun to warm by then. */
  private long switchNanos(Timeline timeline, int edge) {
    long planned =
        edge >= 0
            ? timeline.edges().get(edge).offsetNanos() + startNanos()
            : Math.round((startSeconds() + (2 * edge + 1) * PERIOD_SECONDS / 4) * NANOS);
    return planned + Math.round(lateSeconds * NANOS);
  }

  private RunHeader header(List<CycleWindow> windows) {
    return new RunHeader(
        1,
        "test",
        Instant.EPOCH,
        startNanos(),
        "run",
        "",
        "",
        sequence(),
        Envelope.OPEN,
        new CameraFacts(
            "camera",
            width,
            height,
            "uint16",
            framesPerSecond,
            0.01,
            -273.15,
            0.05,
            0,
            lagSeconds,
            true,
            true,
            1,
            65_535),
        "",
        0,
        List.of(),
        DetectionSettings.usual(PERIOD_SECONDS, lagSeconds, 0.05, 5, cycles),
        windows,
        Map.of(),
        List.of());
  }
}
