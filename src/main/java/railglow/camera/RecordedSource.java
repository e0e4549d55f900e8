package railglow.camera;

import java.io.IOException;
import java.util.function.IntToLongFunction;
import railglow.observed.Frame;
import railglow.thermal.Samples;
import railglow.time.MonotonicClock;

/**
 * Recorded frames as a source. Either they come as fast as they are asked for, each with its
 * recorded arrival, or in step with a clock, so that a file can stand in for a camera. Not
 * thread-safe.
 */
public final class RecordedSource implements FrameSource {
  private final RecordedFrames frames;
  private final IntToLongFunction arrivalNanos;
  private final MonotonicClock pace;
  private int next;

  private RecordedSource(
      RecordedFrames frames, IntToLongFunction arrivalNanos, MonotonicClock pace) {
    this.frames = frames;
    this.arrivalNanos = arrivalNanos;
    this.pace = pace;
  }

  /**
   * As fast as they are asked for.
   *
   * @param arrivalNanos the arrival of each index, never descending
   */
  public static RecordedSource atOnce(RecordedFrames frames, IntToLongFunction arrivalNanos) {
    return new RecordedSource(frames, arrivalNanos, null);
  }

  /** In step with a clock, the first one now. */
  public static RecordedSource paced(
      RecordedFrames frames, double framesPerSecond, MonotonicClock clock) {
    long start = clock.nanos();
    return new RecordedSource(
        frames, index -> start + Math.round(index * 1e9 / framesPerSecond), clock);
  }

  @Override
  public String description() {
    return frames.description();
  }

  @Override
  public Samples newSamples() {
    return frames.newSamples();
  }

  @Override
  public Outcome read(Frame frame, long timeoutNanos) throws IOException {
    if (next >= frames.count()) {
      return Outcome.ENDED;
    }
    long due = arrivalNanos.applyAsLong(next);
    if (pace != null && pace.nanos() - due < 0) {
      return Outcome.NOTHING_YET;
    }
    frame.begin(next, pace == null ? due : pace.nanos());
    frames.read(next, frame.samples());
    next++;
    return Outcome.FRAME;
  }

  @Override
  public void close() {
    frames.close();
  }
}
