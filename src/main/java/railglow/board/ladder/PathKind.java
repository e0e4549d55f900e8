package railglow.board.ladder;

/** What kind of path a rail offers to current. */
public enum PathKind {
  OHMIC("ohmic"),
  JUNCTION("junction-like"),
  CURRENT_LIMITED("current-limited"),
  DRIFTING("drifting with heat"),
  BREAKING_DOWN("breaking down"),
  OPEN_CONTACT("open contact"),
  TOO_FEW_STEPS("too few steps to say");

  private final String words;

  PathKind(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }
}
