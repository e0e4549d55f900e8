package railglow.camera.alignment;

/** The measurement can't be trusted; the message says why and what to change. */
public final class AlignmentRefusedException extends Exception {
  public AlignmentRefusedException(String message) {
    super(message);
  }
}
