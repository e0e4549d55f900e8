package railglow.board.readings;

/**
 * What a reading says about its rail.
 *
 * @param rail its name
 * @param railOhms the reading it rests on, leads taken off; NaN when there is none
 * @param state what it is
 * @param basis what it was compared with
 * @param sureness how sure that is
 * @param shareOfNormal the reading as a share of the least that is normal; NaN when that is not
 *     known
 * @param reason one plain sentence
 */
public record RailJudgement(
    String rail,
    double railOhms,
    State state,
    Basis basis,
    Sureness sureness,
    double shareOfNormal,
    String reason) {
  /** What a rail is like. */
  public enum State {
    NORMAL("normal"),
    DEAD_SHORT("dead short"),
    LEAK("leak"),
    LOW("low"),
    HIGH("high or open"),
    /** The reading depends on its polarity or level. */
    SEMICONDUCTOR("semiconductor path"),
    UNKNOWN("can't be said");

    private final String words;

    State(String words) {
      this.words = words;
    }

    public String words() {
      return words;
    }

    public boolean wrong() {
      return this == DEAD_SHORT || this == LEAK || this == LOW || this == HIGH;
    }

    /** Whether injecting into the rail can show the fault as heat. */
    public boolean huntable() {
      return this == DEAD_SHORT || this == LEAK || this == LOW;
    }
  }

  /** What a reading is compared with. */
  public enum Basis {
    NORMAL_RANGE("the board file's normal range"),
    KNOWN_GOOD("a known-good board"),
    PLAIN_RULES("plain rules of the trade (common practice, no source)"),
    NOTHING("nothing");

    private final String words;

    Basis(String words) {
      this.words = words;
    }

    public String words() {
      return words;
    }
  }

  /** How sure a judgement is. */
  public enum Sureness {
    /** Beyond three standard deviations and off by a factor of two or more. */
    CLEAR,
    /** Beyond three standard deviations. */
    LIKELY,
    /** Within the error, or by plain rules where boards differ. */
    DOUBTFUL
  }
}
