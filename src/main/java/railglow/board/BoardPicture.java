package railglow.board;

/**
 * A picture of the board, straight from above.
 *
 * @param file its path as the board file gives it
 * @param leftPixel column of the board's left edge
 * @param bottomPixel row of the board's lower edge, rows downwards
 * @param pixelsPerMillimetre the same in both directions
 */
public record BoardPicture(
    String file, double leftPixel, double bottomPixel, double pixelsPerMillimetre) {
  public double column(double xMillimetres) {
    return leftPixel + xMillimetres * pixelsPerMillimetre;
  }

  public double row(double yMillimetres) {
    return bottomPixel - yMillimetres * pixelsPerMillimetre;
  }
}
