package railglow.camera.alignment;

import railglow.thermal.Samples;

/**
 * The pixels of one small warm place, weighted by how much each warms, against a ring around it.
 *
 * @param warmest flat index
 * @param pixels flat indices
 * @param weights of the pixels, sum 1
 * @param around flat indices of the ring
 */
record Spot(int warmest, int[] pixels, double[] weights, int[] around) {
  /** The weighted mean above the ring's. */
  double value(Samples image) {
    double sum = 0;
    for (int k = 0; k < pixels.length; k++) {
      sum += weights[k] * image.valueAt(pixels[k]);
    }
    double ring = 0;
    for (int index : around) {
      ring += image.valueAt(index);
    }
    return sum - ring / around.length;
  }
}
