package railglow.camera;

import java.io.IOException;
import railglow.thermal.Samples;

/** Frames that are all there, read by index. Used by one thread; closed once. */
public interface RecordedFrames extends AutoCloseable {
  /** What and where this is, for messages. */
  String description();

  int count();

  /** A fresh image of the recording's kind and size. */
  Samples newSamples();

  /**
   * Reads one frame.
   *
   * @param index 0 to count - 1
   * @param into made by {@link #newSamples}
   * @throws IOException with one sentence when the file is broken there
   */
  void read(int index, Samples into) throws IOException;

  @Override
  void close();
}
