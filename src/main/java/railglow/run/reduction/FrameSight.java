package railglow.run.reduction;

import railglow.camera.FrameMarks;
import railglow.camera.motion.MotionState;
import railglow.camera.motion.MotionWatch;
import railglow.journal.CameraFacts;
import railglow.observed.Frame;
import railglow.thermal.Samples;

/**
 * What can be said of a frame from frames alone: when it was taken, whether it is frozen, damaged
 * or moved, and how far. A pure function of the frames in order. For one thread, which need not be
 * the reduction's: a replay sees frames while those before are being reduced (decision 0035).
 */
public final class FrameSight {
  private final FrameTimes times;
  private final FrameMarks marks;
  private final MotionWatch motion;
  private final ReductionListener listener;
  private boolean lost;
  private boolean blind;

  /**
   * @param listener is told notes on times and on motion, on the thread that sees
   */
  FrameSight(CameraFacts camera, Samples like, MotionWatch motion, ReductionListener listener) {
    this.times = new FrameTimes(camera, listener);
    this.marks = new FrameMarks(like, camera.framesPerSecond(), camera.shutterSettlingSeconds());
    this.motion = motion;
    this.listener = listener;
  }

  /** Marks a frame and tells what else was seen. */
  public SeenFrame see(Frame frame) {
    return see(frame, new SeenFrame());
  }

  /** As {@link #see(Frame)}, into one that is used again; returns it. */
  SeenFrame see(Frame frame, SeenFrame into) {
    into.frame = frame;
    into.midNanos = times.midExposureNanos(frame);
    into.framesPerSecond = times.framesPerSecond();
    marks.mark(frame, into.midNanos);
    boolean isLost = motion.look(frame, into.midNanos) == MotionState.LOST;
    if (!blind && motion.blindness().isPresent()) {
      blind = true;
      listener.onNote(motion.blindness().get(), into.midNanos);
    }
    into.losesPlace = isLost && !lost;
    lost |= isLost;
    into.moveX = motion.correctionX();
    into.moveY = motion.correctionY();
    return into;
  }
}
