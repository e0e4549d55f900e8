package railglow.camera.noise;

/** What is wrong with a pixel. */
public enum PixelFault {
  /** Never changes, or is no number. */
  DEAD,
  /** Moves far more than the others. */
  FLICKERING,
  /** At the end of the camera's scale. */
  SATURATED,
  /** In a row or column that does not fit between its neighbours. */
  OUT_OF_LINE
}
