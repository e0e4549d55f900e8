package railglow.run.reduction;

import railglow.observed.Frame;

/** A frame with its marks, its time and its shift; filled by {@link FrameSight}. */
public final class SeenFrame {
  Frame frame;
  long midNanos;

  /** Of the camera around this frame. */
  double framesPerSecond;

  /** What its pixels must be moved back by, camera pixels. */
  double moveX;

  double moveY;

  /** Whether the scene's place was lost with this very frame. */
  boolean losesPlace;

  SeenFrame() {}
}
