package railglow.thermal;

/**
 * The filters of all widths, which take a cycle together: what a row has in common for all kernels
 * is made once. The same bits as of each filter alone. Not thread-safe.
 */
final class FilterBank {
  private final int width;
  private final int height;
  private final WidthPlanes[] widths;
  private final RowPairs pairs;

  FilterBank(int width, int height, WidthPlanes... widths) {
    this.width = width;
    this.height = height;
    this.widths = widths.clone();
    int radius = 0;
    for (WidthPlanes each : widths) {
      radius = Math.max(radius, each.filter().radius());
    }
    pairs = new RowPairs(width, radius);
  }

  /** Makes a cycle the last one of every width, instead of the one before. */
  void setLast(ReducedCycle cycle, CommonParts.Removed removedI, CommonParts.Removed removedC) {
    SymmetricKernel.RowOfSums[] rows = new SymmetricKernel.RowOfSums[widths.length];
    for (int w = 0; w < rows.length; w++) {
      rows[w] = widths[w].filter().into(widths[w].lastI(), removedI);
    }
    filter(cycle.inPhase(), rows);
    for (int w = 0; w < rows.length; w++) {
      rows[w] = widths[w].filter().into(widths[w].lastC(), removedC);
    }
    filter(cycle.quadrature(), rows);
  }

  private void filter(float[] plane, SymmetricKernel.RowOfSums[] rows) {
    for (int row = 0; row < height; row++) {
      pairs.set(plane, row * width, 0, width);
      for (int w = 0; w < rows.length; w++) {
        widths[w].filter().next(pairs, row, rows[w]);
      }
    }
  }
}
