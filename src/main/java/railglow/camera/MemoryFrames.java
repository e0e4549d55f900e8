package railglow.camera;

import java.util.List;
import railglow.thermal.Samples;

/** Frames in memory, all of one kind and size. */
public final class MemoryFrames implements RecordedFrames {
  private final List<Samples> frames;

  /**
   * @param frames at least one; not copied
   */
  public MemoryFrames(List<? extends Samples> frames) {
    if (frames.isEmpty()) {
      throw new IllegalArgumentException("no frames");
    }
    this.frames = List.copyOf(frames);
  }

  @Override
  public String description() {
    return frames.size() + " frames in memory";
  }

  @Override
  public int count() {
    return frames.size();
  }

  @Override
  public Samples newSamples() {
    return frames.get(0).newLike();
  }

  @Override
  public void read(int index, Samples into) {
    into.copyFrom(frames.get(index));
  }

  @Override
  public void close() {
    // Nothing is held.
  }
}
