package railglow.report;

/** What a PDF is printed on. */
public enum Paper {
  A4("A4", 82),
  LETTER("letter", 66);

  private final String cssSize;
  private final double pictureMillimetres;

  Paper(String cssSize, double pictureMillimetres) {
    this.cssSize = cssSize;
    this.pictureMillimetres = pictureMillimetres;
  }

  /** How high the picture on the owner's page may be so that the page stays one. */
  double pictureMillimetres() {
    return pictureMillimetres;
  }

  String cssSize() {
    return cssSize;
  }
}
