package railglow.supply;

import java.util.function.Consumer;

/**
 * What the companion says to the operator. It speaks only when the program can't any more: the
 * program is gone, or the output can't be proven off. Owned by the companion's loop.
 */
final class CompanionVoice {
  private static final long FIRST_ALARM_NANOS = 2_000_000_000L;
  private static final long NEXT_ALARM_NANOS = 10_000_000_000L;
  private final Consumer<String> operator;
  private boolean ended;
  private long nextAlarmNanos;

  /**
   * @param operator takes each sentence; must not throw
   */
  CompanionVoice(Consumer<String> operator) {
    this.operator = operator;
  }

  /** It has begun to drive off. */
  void acting(long nowNanos) {
    nextAlarmNanos = nowNanos + FIRST_ALARM_NANOS;
  }

  /** It has ended a program that stood still and held the only way to the supply. */
  void endedTheProgram() {
    ended = true;
  }

  /** The output is proven off and the program is gone. */
  void provenOff() {
    say(
        (ended
                ? "the program stood still, holding the line, and was ended"
                : "the program ended without a goodbye")
            + "; output proven off");
  }

  /** The output is not proven off at this moment. */
  void notProven(String doubt, long nowNanos) {
    if (nowNanos - nextAlarmNanos >= 0) {
      alarm(doubt, "still trying");
      nextAlarmNanos = nowNanos + NEXT_ALARM_NANOS;
    }
  }

  /** It gives up. */
  void givenUp(String doubt) {
    alarm(doubt, "given up");
  }

  private void alarm(String doubt, String what) {
    say(NotProvenOff.sentence("OUTPUT NOT PROVEN OFF (" + what + ")", doubt));
  }

  private void say(String sentence) {
    operator.accept("Companion  " + sentence);
  }
}
