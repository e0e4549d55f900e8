package railglow.thermal;

/**
 * What rows and columns that move as wholes cost a source, before a run: taking them out takes some
 * of the source along, and what is left of them is noise. The detector's own rules, with the parts
 * as large as they are on average. Stateless.
 */
final class ExpectedLines {
  /** A Gaussian kernel's squared sum over the sum of its squares, per sigma, along one axis. */
  private static final double PER_SIGMA = 2 * Math.sqrt(Math.PI);

  private ExpectedLines() {}

  /**
   * Share of a source's score that is left behind a filter, against pixels that know nothing of one
   * another.
   *
   * @param sigma of the filter, pixels
   */
  static double scorePart(PulseNoise noise, double sigma, int width, int height) {
    double rows = removedShare(noise.rowVariancePart(), width, height);
    double columns = removedShare(noise.columnVariancePart(), height, width);
    double signal =
        left(rows, Math.min(1, PER_SIGMA * sigma / width))
            * left(columns, Math.min(1, PER_SIGMA * sigma / height));
    double lines =
        noise.rowVariancePart() * (1 - rows) * (1 - rows)
            + noise.columnVariancePart() * (1 - columns) * (1 - columns);
    return Math.sqrt(signal / (noise.filteredVariancePart(sigma) + PER_SIGMA * sigma * lines));
  }

  /**
   * Share of line means that is taken out, see CommonParts.
   *
   * @param variancePart of a line's own movement over the variance of a pixel
   */
  private static double removedShare(double variancePart, int length, int lines) {
    return 1 - Math.min(1, CommonParts.doubt(lines) / (1 + variancePart * length));
  }

  /** Squared score that is left when a share of a line's mean goes, which has a part of it. */
  private static double left(double share, double inMean) {
    double signal = 1 - share * inMean;
    return signal * signal / Math.max(0.1, 1 - (2 * share - share * share) * inMean);
  }
}
