package railglow.run.handsfree;

/** How the probe meets the board, as far as volts and amperes tell. */
public enum ContactState {
  /** Nothing flows: the probe is open. */
  IN_AIR,
  /** Something flows, not yet long enough to be called steady. */
  CONTACT_SETTLING,
  /** The resistance has stayed in its band for long enough. */
  STEADY,
  /** Contact comes and goes, or its resistance swings beyond its band. */
  BOUNCING,
  /** There was a contact, and nothing has flowed for some time now. Followed by in air. */
  LIFTED;

  public boolean isTouching() {
    return this == CONTACT_SETTLING || this == STEADY || this == BOUNCING;
  }
}
