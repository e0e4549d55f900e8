package railglow.scpi;

/**
 * A text that breaks the rules of SCPI, with the place and the standard's own error number.
 *
 * <p>The same numbers serve both directions: a simulated supply puts them in its error queue, a
 * controller shows them beside the reply it could not read.
 */
public final class ScpiException extends Exception {
  private final ScpiError error;
  private final int position;

  /**
   * @param position index of the offending character in the text that was parsed, from 0
   * @param detail what was wrong there, as a phrase
   */
  public ScpiException(ScpiError error, int position, String detail) {
    super(
        "character "
            + (position + 1)
            + ": "
            + detail
            + " ("
            + error.code()
            + " "
            + error.text()
            + ")");
    this.error = error;
    this.position = position;
  }

  public ScpiError error() {
    return error;
  }

  /** Index of the offending character, from 0. */
  public int position() {
    return position;
  }

  /** What an instrument would put in its error queue for this. */
  public ErrorEntry entry() {
    return ErrorEntry.of(error);
  }
}
