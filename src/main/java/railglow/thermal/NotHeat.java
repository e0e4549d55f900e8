package railglow.thermal;

/**
 * Why something that follows the pulse is not called heat. A heated body answers in every cycle
 * alike, later than the pulse and not later than its own lag allows.
 */
public enum NotHeat {
  AHEAD_OF_THE_PULSE("it comes before the pulse"),
  LATER_THAN_A_BODY("it comes later than a warmed body can"),
  NOT_IN_EVERY_CYCLE("it is missing in too many cycles"),
  NO_STRONGER_THAN_COLD("other places seem to cool in step just as strongly");

  private final String words;

  NotHeat(String words) {
    this.words = words;
  }

  /** As the second half of a sentence. */
  public String words() {
    return words;
  }
}
