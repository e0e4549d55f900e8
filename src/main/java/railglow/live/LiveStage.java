package railglow.live;

/** Where a run or a hands-free session stands, in the words that the page shows. */
public enum LiveStage {
  /** Nothing has begun. */
  NONE(""),
  MEASURING("Running"),
  WORKING("Working out the result"),
  HEAT_FOUND("Found"),
  NO_HEAT("Nothing found"),
  UNDECIDED("No statement possible"),
  LISTENING("Listening: set the probe down"),
  CONTACT_FELT("Contact felt: press and hold"),
  UNSTEADY("Contact unsteady"),
  KEEP_STILL("Keep still"),
  RUNNING("Running: keep still"),
  FOUND("Found: lift the probe"),
  NOTHING_FOUND("Nothing found: lift the probe"),
  LIFTED("Lifted"),
  SESSION_ENDED("Session ended"),
  STOPPED("Stopped");

  private final String words;

  LiveStage(String words) {
    this.words = words;
  }

  /** For the operator, who is two metres away. */
  public String words() {
    return words;
  }
}
