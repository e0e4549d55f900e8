package railglow.observed;

/** Why a frame is not used, or must be used with care. */
public enum FrameMark {
  /** Within an edge's uncertainty or the camera's own time constant after it. */
  TRANSITION,
  /** The same image as the one before, pixel for pixel. */
  FROZEN,
  /** Taken while the shutter was shut, or in the settling after it. */
  SHUTTER,
  /** The scene had moved against the camera. */
  MOVED,
  /** Frames are missing just before this one. */
  AFTER_GAP,
  /** Wrong size or content that can't be an image. */
  DAMAGED,
  /** Outside every cycle: lead-in, rest, or after the end. */
  OUTSIDE
}
