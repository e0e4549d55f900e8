package railglow.camera.alignment;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import railglow.observed.Edge;
import railglow.observed.Frame;
import railglow.observed.FrameMark;

/**
 * Gathers what an alignment needs from frames and edges as they come: finds the pulsed resistor in
 * the first pulses, then follows its pixels. Pulses should be about 0.8 s on and 0.9 s off, not a
 * whole number of frames, so that the edges fall anywhere between frames. Deterministic. Not
 * thread-safe.
 */
public final class ResistorInView {
  /** Pulses that are spent on finding the place. */
  public static final int FINDING_PULSES = 4;

  private static final double NANOS = 1e9;
  private static final double SETTLED_SECONDS = 0.4;
  private final SpotSearch search;
  private final List<EdgeTime> edges = new ArrayList<>();
  private final List<Double> times = new ArrayList<>();
  private final List<Double> values = new ArrayList<>();
  private long zeroNanos;
  private int pulses;
  private Spot spot;

  public ResistorInView(int width, int height) {
    this.search = new SpotSearch(width, height);
  }

  /** Takes the next edge. */
  public void onEdge(Edge edge) {
    if (edges.isEmpty()) {
      zeroNanos = edge.commandedNanos();
    }
    edges.add(EdgeTime.of(edge, zeroNanos));
    pulses += edge.on() ? 1 : 0;
  }

  /**
   * Takes the next frame, after the edges before it.
   *
   * @param lineNanos its arrival with the jitter taken out and no latency subtracted
   */
  public void onFrame(Frame frame, long lineNanos) throws AlignmentRefusedException {
    if (edges.isEmpty() || !isUsable(frame)) {
      return;
    }
    double seconds = (lineNanos - zeroNanos) / NANOS;
    if (pulses <= FINDING_PULSES) {
      EdgeTime last = edges.get(edges.size() - 1);
      if (seconds >= last.seconds() + SETTLED_SECONDS) {
        search.add(frame.samples(), last.on());
      }
      return;
    }
    if (spot == null) {
      spot = search.find();
    }
    times.add(seconds);
    values.add(spot.value(frame.samples()));
  }

  /** Pulses begun so far. */
  public int pulses() {
    return pulses;
  }

  /** The flat index of the warmest pixel, once it was found. */
  public OptionalInt warmestPixel() {
    return spot == null ? OptionalInt.empty() : OptionalInt.of(spot.warmest());
  }

  /**
   * Fits.
   *
   * @param timeConstantSeconds what is known of the camera's time constant beforehand
   */
  public Alignment fit(double timeConstantSeconds) throws AlignmentRefusedException {
    if (spot == null) {
      throw new AlignmentRefusedException(
          "only " + pulses + " pulses came; more than " + FINDING_PULSES + " are needed");
    }
    return AlignmentFit.fit(
        edges,
        times.stream().mapToDouble(Double::doubleValue).toArray(),
        values.stream().mapToDouble(Double::doubleValue).toArray(),
        timeConstantSeconds);
  }

  private static boolean isUsable(Frame frame) {
    return !frame.marks().contains(FrameMark.FROZEN)
        && !frame.marks().contains(FrameMark.DAMAGED)
        && !frame.marks().contains(FrameMark.SHUTTER)
        && !frame.marks().contains(FrameMark.MOVED);
  }
}
