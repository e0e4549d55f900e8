package railglow.link;

import com.google.re2j.Pattern;
import com.google.re2j.PatternSyntaxException;

/**
 * A regular expression that a user's file gives, over what an instrument says. Both ends are
 * strangers, so matching must not take long whatever they are: the engine needs time in proportion
 * to expression times reply, and both are bounded. Immutable.
 */
public final class ReplyPattern {
  /** The longest expression. */
  public static final int MOST_CHARACTERS = 500;

  /** A longer reply fits no expression. */
  public static final int MOST_REPLY_CHARACTERS = 1000;

  /** Counted repetitions are written out, so a short expression may mean a long one. */
  private static final int MOST_STEPS = 10_000;

  private final Pattern pattern;

  private ReplyPattern(Pattern pattern) {
    this.pattern = pattern;
  }

  /**
   * @throws IllegalArgumentException with the end of a sentence about the expression
   */
  public static ReplyPattern of(String text) {
    if (text.length() > MOST_CHARACTERS) {
      throw new IllegalArgumentException("is longer than " + MOST_CHARACTERS + " characters");
    }
    try {
      ReplyPattern made = new ReplyPattern(Pattern.compile(text));
      if (made.pattern.programSize() > MOST_STEPS) {
        throw new IllegalArgumentException(
            "repeats too much: written out it has "
                + made.pattern.programSize()
                + " steps, allowed are "
                + MOST_STEPS);
      }
      return made;
    } catch (PatternSyntaxException e) {
      throw new IllegalArgumentException(
          "is not a regular expression as used here (those without look-around and references"
              + " back): "
              + e.getDescription(),
          e);
    } catch (StackOverflowError e) {
      throw new IllegalArgumentException("nests too deeply", e);
    }
  }

  /** Fits nothing. */
  public static ReplyPattern none() {
    return of("[^\\x00-\\x{10FFFF}]");
  }

  /** Whether some part of the reply fits. */
  public boolean isFoundIn(String reply) {
    return reply.length() <= MOST_REPLY_CHARACTERS && pattern.matcher(reply).find();
  }

  /** Whether the whole reply fits. */
  public boolean matches(String reply) {
    return reply.length() <= MOST_REPLY_CHARACTERS && pattern.matcher(reply).matches();
  }

  /** As it was given. */
  public String text() {
    return pattern.pattern();
  }

  @Override
  public String toString() {
    return text();
  }
}
