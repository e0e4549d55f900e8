package railglow.scpi;

import java.util.List;

/**
 * One command or query of a program message, with its header from the root of the command tree.
 *
 * @param isCommon whether it starts with an asterisk
 * @param header the keywords as they were written, in upper case; one keyword if common
 * @param position index of the header in the message
 */
public record Command(
    boolean isCommon,
    List<String> header,
    boolean isQuery,
    List<Argument> arguments,
    int position) {

  public Command {
    header = List.copyOf(header);
    arguments = List.copyOf(arguments);
  }

  /** For example {@code *IDN?} or {@code VOLT:PROT}. */
  public String headerText() {
    return (isCommon ? "*" : "") + String.join(":", header) + (isQuery ? "?" : "");
  }

  /**
   * Refuses a wrong number of arguments.
   *
   * @throws ScpiException -109 for too few, -108 for too many
   */
  public void requireArguments(int least, int most) throws ScpiException {
    if (arguments.size() < least) {
      throw new ScpiException(
          ScpiError.MISSING_PARAMETER,
          position,
          headerText() + " needs " + least + " parameter(s), got " + arguments.size());
    }
    if (arguments.size() > most) {
      throw new ScpiException(
          ScpiError.PARAMETER_NOT_ALLOWED,
          arguments.get(most).position(),
          headerText() + " takes " + most + " parameter(s), got " + arguments.size());
    }
  }

  /**
   * @throws ScpiException -109 if there are fewer
   */
  public Argument argument(int index) throws ScpiException {
    requireArguments(index + 1, Integer.MAX_VALUE);
    return arguments.get(index);
  }
}
