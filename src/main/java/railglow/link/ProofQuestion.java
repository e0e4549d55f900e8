package railglow.link;

import java.util.List;
import java.util.regex.Pattern;

/**
 * A question whose answer can't be mistaken for the late answer to another one. Asked to bring a
 * link back into step where a new connection is not enough.
 */
public interface ProofQuestion {
  /**
   * One attempt.
   *
   * @param before messages without reply, sent first
   * @param answer what the whole reply must match
   */
  record Attempt(List<String> before, String question, Pattern answer) {}

  /**
   * @param attempt counts up from 0 over the life of the link
   */
  Attempt attempt(int attempt);

  /**
   * A fixed question. Good only if nothing else the instrument says looks like its answer, as for
   * an identity.
   */
  static ProofQuestion fixed(String question, Pattern answer) {
    return attempt -> new Attempt(List.of(), question, answer);
  }

  /**
   * Writes a number that changes at each attempt into a harmless register and asks for it: the
   * surest question.
   *
   * @param setting with one {@code %d} for the number
   * @param low the first number, taken again after high
   */
  static ProofQuestion marker(String setting, String question, int low, int high) {
    return attempt -> {
      int number = low + attempt % (high - low + 1);
      Pattern answer = Pattern.compile("\\s*\\+?0*" + number + "(?:\\.0*)?\\s*");
      return new Attempt(List.of(String.format(setting, number)), question, answer);
    };
  }
}
