package railglow.board.geometry;

/** Points that can't tie a picture to a board; says why and what to do. */
public final class RegistrationException extends IllegalArgumentException {
  public RegistrationException(String message) {
    super(message);
  }
}
