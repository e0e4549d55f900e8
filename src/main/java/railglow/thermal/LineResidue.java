package railglow.thermal;

/**
 * What the removal of common parts took from the lines that cross heat: its skirts lie within pixel
 * noise in every single cycle, are taken for part of the line and leave a negative line in the
 * mean. See {@link BesideHeat}. Immutable.
 *
 * @param rows what every pixel of a row has of it
 * @param columns likewise
 */
record LineResidue(double[] rows, double[] columns) {
  /** Subtracts it from a mean plane where there is data. */
  void subtractFrom(float[] mean, float[] mask) {
    for (int row = 0, i = 0; row < rows.length; row++) {
      for (int x = 0; x < columns.length; x++, i++) {
        if (mask == null || mask[i] > 0) {
          mean[i] -= (float) (rows[row] + columns[x]);
        }
      }
    }
  }

  /** The plane of it where there is no data, 0 elsewhere. */
  float[] atHoles(float[] mask) {
    float[] plane = new float[mask.length];
    for (int row = 0, i = 0; row < rows.length; row++) {
      for (int x = 0; x < columns.length; x++, i++) {
        plane[i] = mask[i] > 0 ? 0 : (float) (rows[row] + columns[x]);
      }
    }
    return plane;
  }
}
