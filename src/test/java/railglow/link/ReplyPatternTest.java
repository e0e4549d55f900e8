package railglow.link;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ReplyPatternTest {
  @Test
  void anExpressionIsFoundAnywhereOrMustFitTheWhole() {
    ReplyPattern pattern = ReplyPattern.of("^ACME,PS-\\d+");
    assertTrue(pattern.isFoundIn("ACME,PS-3005,0,1.0"));
    assertFalse(pattern.isFoundIn("My ACME,PS-3005"));
    assertFalse(pattern.matches("ACME,PS-3005,0,1.0"));
    assertTrue(pattern.matches("ACME,PS-3005"));
    assertFalse(ReplyPattern.none().isFoundIn("anything"));
    assertFalse(ReplyPattern.none().isFoundIn(""));
  }

  /** Engines that try one way after the other need longer than the universe for each of these. */
  @ParameterizedTest
  @ValueSource(
      strings = {"^(a+)+$", "(a|aa)+$", "(.*)*x", "((a*)*)*b", "(a|a)*c", "(()*)*x", "(x*)*y{5}z"})
  @Timeout(value = 60, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
  void noExpressionTakesLongWhateverTheReply(String text) {
    ReplyPattern pattern = ReplyPattern.of(text);
    assertFalse(pattern.matches("a".repeat(ReplyPattern.MOST_REPLY_CHARACTERS - 1) + "!"));
    assertFalse(pattern.isFoundIn("!".repeat(ReplyPattern.MOST_REPLY_CHARACTERS - 1) + "!"));
  }

  @Test
  void aReplyOfAnyLengthIsRefusedWithoutLookingAtIt() {
    assertFalse(ReplyPattern.of("").isFoundIn("a".repeat(ReplyPattern.MOST_REPLY_CHARACTERS + 1)));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "(",
        "(a)\\1",
        "a(?=b)",
        "((a{100}){100}){100}",
        "(x{900})(y{900}){9}(z{900}){9}",
        "[z-a]"
      })
  void whatItCannotHoldIsRefusedWithASentence(String text) {
    IllegalArgumentException e =
        assertThrows(IllegalArgumentException.class, () -> ReplyPattern.of(text));
    assertTrue(e.getMessage().length() > 10, e.getMessage());
  }

  @Test
  void anExpressionThatNestsDeeplyIsTakenOrRefused() {
    String deep = "(".repeat(249) + ")".repeat(249);
    assertTrue(ReplyPattern.of(deep).isFoundIn(""));
    assertThrows(IllegalArgumentException.class, () -> ReplyPattern.of("a".repeat(501)));
  }
}
