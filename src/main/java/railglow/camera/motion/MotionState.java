package railglow.camera.motion;

/** What is known of the scene's place against the camera. */
public enum MotionState {
  /** The reference is still being gathered. */
  LEARNING,
  /** The scene has too little texture, or the image is too small, to tell. */
  CANT_TELL,
  /** No shift beyond its own error: frames are left exactly as they are. */
  STILL,
  /** A small shift: frames are moved back onto the reference. */
  CORRECTED,
  /** In motion, or not yet found again: frames are marked. */
  MOVED,
  /** Not found again in time: what comes can't be compared any more. */
  LOST
}
