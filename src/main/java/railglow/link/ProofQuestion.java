package railglow.link;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;

/**
 * Questions whose answers can't be mistaken for late answers to others. Asked to bring a link back
 * into step where a new connection is not enough.
 */
public interface ProofQuestion {
  /**
   * One question.
   *
   * @param answer whether a whole reply is the answer
   */
  record Asked(String question, Predicate<String> answer) {}

  /**
   * One attempt.
   *
   * @param before messages without reply, sent first
   * @param questions asked one after the other; each must get its own answer. At least one
   */
  record Attempt(List<String> before, List<Asked> questions) {
    public Attempt {
      before = List.copyOf(before);
      questions = List.copyOf(questions);
    }
  }

  /**
   * @param attempt counts up from 0 over the life of the link
   */
  Attempt attempt(int attempt);

  /**
   * A fixed question. Good only if nothing else the instrument says looks like its answer, as for
   * an identity.
   */
  static ProofQuestion fixed(String question, Predicate<String> answer) {
    return attempt -> new Attempt(List.of(), List.of(new Asked(question, answer)));
  }

  /**
   * The same with one more question behind it, whose answer looks different: an instrument that
   * stays one answer behind gives the first answer to the second question.
   */
  default ProofQuestion then(String question, Predicate<String> answer) {
    return attempt -> {
      Attempt first = attempt(attempt);
      List<Asked> questions = new ArrayList<>(first.questions());
      questions.add(new Asked(question, answer));
      return new Attempt(first.before(), questions);
    };
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
      ReplyPattern answer = ReplyPattern.of("\\s*\\+?0*" + number + "(?:\\.0*)?\\s*");
      return new Attempt(
          List.of(String.format(setting, number)), List.of(new Asked(question, answer::matches)));
    };
  }
}
