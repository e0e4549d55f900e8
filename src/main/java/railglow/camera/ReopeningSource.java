package railglow.camera;

import java.io.IOException;
import java.util.EnumSet;
import java.util.Optional;
import railglow.observed.Frame;
import railglow.observed.FrameMark;
import railglow.thermal.Samples;
import railglow.time.MonotonicClock;

/**
 * A source that is opened anew when it ends or breaks, such as a camera that was unplugged and put
 * back, or a driver program that died. Numbers go on by the time that passed. The first frames
 * after a loss only prove that the stream is one again and are not given; the next one is marked.
 * How long without frames is too long is for others to judge. Not thread-safe, but {@link
 * #lastTrouble} and {@link #losses} may be read from any thread.
 */
public final class ReopeningSource implements FrameSource {
  /** Opens the source once more. */
  @FunctionalInterface
  public interface Opening {
    FrameSource open() throws IOException;
  }

  private static final long PAUSE_NANOS = 500_000_000;

  /** A stream of another layout shows itself within so many frames. */
  private static final int PROVING_FRAMES = 3;

  private static final double NANOS = 1e9;
  private final Opening opening;
  private final double framesPerSecond;
  private final MonotonicClock clock;
  private final String description;
  private final Samples like;
  private FrameSource current;
  private long nextTryNanos;
  private long offset;
  private boolean reopened;
  private int unproven;
  private boolean begun;
  private long lastNumber = -1;
  private long lastArrivalNanos;
  private volatile int losses;
  private volatile String lastTrouble;

  private ReopeningSource(
      Opening opening, FrameSource first, double framesPerSecond, MonotonicClock clock) {
    this.opening = opening;
    this.current = first;
    this.framesPerSecond = framesPerSecond;
    this.clock = clock;
    this.description = first.description();
    this.like = first.newSamples();
  }

  /**
   * Opens the source for the first time; that must succeed.
   *
   * @throws IOException with the source's own sentence
   */
  public static ReopeningSource open(Opening opening, double framesPerSecond, MonotonicClock clock)
      throws IOException {
    return new ReopeningSource(opening, opening.open(), framesPerSecond, clock);
  }

  @Override
  public String description() {
    return description;
  }

  @Override
  public Samples newSamples() {
    return like.newLike();
  }

  @Override
  public Outcome read(Frame frame, long timeoutNanos) {
    if (current == null && !tryAgain()) {
      return Outcome.NOTHING_YET;
    }
    try {
      Outcome outcome = current.read(frame, timeoutNanos);
      if (outcome == Outcome.ENDED) {
        lose("it ended");
        return Outcome.NOTHING_YET;
      }
      if (outcome == Outcome.FRAME && unproven > 0) {
        unproven--;
        return Outcome.NOTHING_YET;
      }
      if (outcome == Outcome.FRAME) {
        number(frame);
      }
      return outcome;
    } catch (IOException e) {
      lose(e.getMessage());
      return Outcome.NOTHING_YET;
    }
  }

  @Override
  public int losses() {
    return losses;
  }

  @Override
  public Optional<String> lastTrouble() {
    return Optional.ofNullable(lastTrouble);
  }

  @Override
  public void close() {
    if (current != null) {
      current.close();
    }
  }

  private boolean tryAgain() {
    if (clock.nanos() - nextTryNanos < 0) {
      return false;
    }
    try {
      current = opening.open();
      reopened = true;
      unproven = PROVING_FRAMES;
      return true;
    } catch (IOException e) {
      lastTrouble = e.getMessage();
      nextTryNanos = clock.nanos() + PAUSE_NANOS;
      return false;
    }
  }

  private void lose(String why) {
    current.close();
    current = null;
    losses = losses + 1;
    lastTrouble = why;
    nextTryNanos = clock.nanos() + PAUSE_NANOS;
  }

  private void number(Frame frame) {
    if (reopened) {
      double passed = (frame.arrivalNanos() - lastArrivalNanos) / NANOS * framesPerSecond;
      long next = begun ? lastNumber + Math.max(1, Math.round(passed)) : 0;
      offset = next - frame.number();
    }
    if (offset != 0) {
      EnumSet<FrameMark> marks = EnumSet.copyOf(frame.marks());
      frame.begin(frame.number() + offset, frame.arrivalNanos());
      frame.marks().addAll(marks);
    }
    if (reopened) {
      frame.marks().add(FrameMark.AFTER_GAP);
      reopened = false;
    }
    begun = true;
    lastNumber = frame.number();
    lastArrivalNanos = frame.arrivalNanos();
  }
}
