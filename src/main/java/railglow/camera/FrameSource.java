package railglow.camera;

import java.io.IOException;
import java.util.Optional;
import railglow.observed.Frame;
import railglow.thermal.Samples;

/**
 * Where frames come from: a stream, a child process, a file, memory. Opened by its factory, used by
 * one thread, closed once.
 */
public interface FrameSource extends AutoCloseable {
  /** What one {@link #read} gives. */
  enum Outcome {
    /** The frame was filled: number, arrival, samples, and any marks the source itself knows. */
    FRAME,
    /** Nothing whole arrived within the time; call again. */
    NOTHING_YET,
    /** The source has ended and will give no more. */
    ENDED
  }

  /** One sentence for reports: what and where this is. */
  String description();

  /** A fresh buffer of this source's kind and size, for the frame pool. */
  Samples newSamples();

  /**
   * Waits a bounded time for the next frame.
   *
   * @param frame filled when the outcome is FRAME; its content is undefined otherwise
   * @throws IOException with a sentence for the operator when the source is broken
   */
  Outcome read(Frame frame, long timeoutNanos) throws IOException;

  /** How often the source was lost since it was opened, and then opened anew; any thread. */
  default int losses() {
    return 0;
  }

  /** Why it was lost, or could not be opened again, the last time, as a sentence; any thread. */
  default Optional<String> lastTrouble() {
    return Optional.empty();
  }

  @Override
  void close();
}
