package railglow.report;

/**
 * The outline of a part, or of what a clip holds, as the camera sees it.
 *
 * @param reference for example C37; of a clip what it holds
 * @param onRail whether it has a pad on the injected rail
 * @param columns of its corners, in pixels of the thermal picture
 * @param rows of its corners
 */
public record PartMark(String reference, boolean onRail, double[] columns, double[] rows) {
  public double column() {
    return mean(columns);
  }

  public double row() {
    return mean(rows);
  }

  /** How far a point is from the outline's middle, in pixels. */
  public double distance(double column, double row) {
    return Math.hypot(column - column(), row - row());
  }

  private static double mean(double[] values) {
    double sum = 0;
    for (double value : values) {
      sum += value;
    }
    return sum / values.length;
  }
}
