package railglow.report;

/** What a PDF is printed on. */
public enum Paper {
  A4("A4"),
  LETTER("letter");

  private final String cssSize;

  Paper(String cssSize) {
    this.cssSize = cssSize;
  }

  String cssSize() {
    return cssSize;
  }
}
