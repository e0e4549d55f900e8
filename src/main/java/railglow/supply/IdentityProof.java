package railglow.supply;

import railglow.link.ProofQuestion;
import railglow.link.ReplyPattern;

/**
 * How a supply without a register to mark proves that its answers belong to the questions: it says
 * who it is, and then gives a number where a number is asked for. One that stays an answer behind
 * gives its name instead. Pure.
 */
public final class IdentityProof {
  private static final ReplyPattern NUMBER =
      ReplyPattern.of(
          "(?i)\\s*[-+]?(?:(?:\\d+\\.?\\d*|\\.\\d+)(?:E[-+]?\\d+)?|NAN|INF)\\s*[a-z]{0,4}\\s*");

  private IdentityProof() {}

  /**
   * @param identify the question
   * @param identity found in its answer
   * @param measure a question with a number for an answer
   */
  public static ProofQuestion of(String identify, ReplyPattern identity, String measure) {
    return ProofQuestion.fixed(identify, identity::isFoundIn).then(measure, NUMBER::matches);
  }
}
