package railglow.link;

/** How a message ends on the wire. */
public enum LineEnd {
  LF("\n"),
  CR("\r"),
  CRLF("\r\n"),
  /** By the end of the transport's own message; only where the port keeps message ends. */
  NONE("");

  private final String text;

  LineEnd(String text) {
    this.text = text;
  }

  public String text() {
    return text;
  }
}
