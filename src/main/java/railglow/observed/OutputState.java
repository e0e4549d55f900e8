package railglow.observed;

/** What is physically known of the supply's output. */
public enum OutputState {
  /** Nothing is proven: never asked, no reply, or a change is on its way. */
  UNKNOWN,
  /** Read back as off, and volts and amperes seen to be down. */
  PROVEN_OFF,
  /** Read back as on. */
  ON
}
