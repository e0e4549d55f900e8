package railglow.thermal;

/**
 * The tests of one width along part of a row. Shares its arrays with who made it, until the next
 * row.
 *
 * @param widthIndex which width
 * @param scale 0 at pixels without data, for all of the picture
 * @param squares by the rule, from the first pixel on
 * @param start first pixel
 * @param pixels how many
 */
record RowTests(
    int widthIndex,
    ScoreRule rule,
    float[] scale,
    RowMoments moments,
    float[] squares,
    int start,
    int pixels) {

  /** The same of the opposite directions. */
  RowTests mirrored(ScoreRule opposite, float[] mirroredSquares) {
    return new RowTests(widthIndex, opposite, scale, moments, mirroredSquares, start, pixels);
  }

  /** The score of a pixel of the picture before any doubt; minus infinity where there is none. */
  float score(int pixel) {
    float score = scale[pixel] > 0 ? rule.score(squares[pixel - start]) : Float.NaN;
    return Float.isNaN(score) ? Float.NEGATIVE_INFINITY : score;
  }

  /** See {@link ScoreRule#takeDoubted}; the pixel counted from the first. */
  void takeDoubted(int x, double enough, LargestScore best) {
    rule.takeDoubted(start + x, moments.at(x), enough, best);
  }
}
