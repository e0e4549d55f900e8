package railglow.run.logging;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.function.ToDoubleFunction;
import railglow.board.places.PlacePixels;
import railglow.camera.ArrivalClock;
import railglow.camera.FrameMarks;
import railglow.journal.CameraFacts;
import railglow.journal.Entry;
import railglow.observed.Frame;
import railglow.observed.FrameMark;
import railglow.run.reduction.LeadInMean;
import railglow.thermal.Plane;
import railglow.thermal.Samples;

/**
 * From recorded frames to what is followed in them: the one way that a log in progress and its
 * replay share, so that both give the same bits. Frames come in the order of their numbers. Not
 * thread-safe.
 */
public final class FrameFollower {
  private static final Set<FrameMark> UNUSABLE =
      Set.of(FrameMark.FROZEN, FrameMark.SHUTTER, FrameMark.DAMAGED);

  /** A tenth of a millikelvin: far below any camera's noise, and short to write. */
  private static final double STEPS = 1e4;

  private final ArrivalClock clock;
  private final FrameMarks marks;
  private final LeadInMean baseline;
  private final List<FollowedPlace> places = new ArrayList<>();
  private final double scale;
  private final double zero;
  private final long baselineEndsNanos;
  private Plane baselinePlane;

  /**
   * @param like one image of the camera's kind and size
   * @param baselineEndsNanos frames exposed before are the baseline of every rise
   */
  public FrameFollower(
      CameraFacts camera, Samples like, List<PlacePixels> followed, long baselineEndsNanos) {
    this.clock =
        camera.timesAreExposures()
            ? ArrivalClock.recorded(camera.framesPerSecond(), camera.latencySeconds())
            : ArrivalClock.live(
                camera.framesPerSecond(), camera.latencySeconds(), camera.numbersAreCounted());
    this.marks = new FrameMarks(like, camera.framesPerSecond(), camera.shutterSettlingSeconds());
    this.baseline = new LeadInMean(like.width(), like.height());
    this.scale = Double.isNaN(camera.kelvinPerCount()) ? 1 : camera.kelvinPerCount();
    this.zero = Double.isNaN(camera.celsiusAtZero()) ? 0 : camera.celsiusAtZero();
    this.baselineEndsNanos = baselineEndsNanos;
    for (PlacePixels pixels : followed) {
      places.add(new FollowedPlace(pixels));
    }
  }

  /** Takes the next frame, adds its marks to it, and gives what was followed. */
  public Entry.Followed onFrame(Frame frame) {
    long midNanos = clock.midExposureNanos(frame);
    marks.mark(frame, midNanos);
    if (midNanos < baselineEndsNanos) {
      if (frame.marks().stream().noneMatch(UNUSABLE::contains)) {
        baseline.add(frame.samples());
      }
    } else if (baselinePlane == null && !baseline.isEmpty()) {
      baselinePlane = baseline.plane(scale, zero);
    }
    float[] base = baselinePlane == null ? null : baselinePlane.values();
    for (FollowedPlace place : places) {
      place.look(frame.samples(), scale, zero, base);
    }
    return new Entry.Followed(
        midNanos,
        frame.number(),
        all(FollowedPlace::mean),
        all(FollowedPlace::low),
        all(FollowedPlace::high),
        all(FollowedPlace::riseMean),
        all(FollowedPlace::riseLow),
        all(FollowedPlace::riseHigh));
  }

  /** Mean of the frames of the baseline; null without any. */
  public Plane baseline() {
    return baselinePlane == null && !baseline.isEmpty()
        ? baseline.plane(scale, zero)
        : baselinePlane;
  }

  /** One in twenty of the newest arrivals is later than this against the others' rhythm. */
  public double latenessSeconds() {
    return clock.highLatenessSeconds();
  }

  private double[] all(ToDoubleFunction<FollowedPlace> value) {
    return places.stream().mapToDouble(place -> rounded(value.applyAsDouble(place))).toArray();
  }

  private static double rounded(double value) {
    return Double.isFinite(value) ? Math.rint(value * STEPS) / STEPS : value;
  }
}
