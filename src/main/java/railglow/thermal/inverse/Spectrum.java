package railglow.thermal.inverse;

import org.apache.commons.math3.transform.DftNormalization;
import org.apache.commons.math3.transform.FastFourierTransformer;
import org.apache.commons.math3.transform.TransformType;

/**
 * Two-dimensional discrete Fourier transform of a picture padded with zeros to powers of two, row
 * by row and column by column with the transform of Commons Math. Arrays are row-major. Immutable;
 * the same input gives the same bits.
 */
final class Spectrum {
  private final int columns;
  private final int rows;

  /** The smallest transform that holds a picture and as many zeros beside it as asked for. */
  Spectrum(int width, int height, int padding) {
    columns = powerOfTwo(width + padding);
    rows = powerOfTwo(height + padding);
  }

  int columns() {
    return columns;
  }

  int rows() {
    return rows;
  }

  int size() {
    return columns * rows;
  }

  /** Square of the wave number of a mode, rad^2 per pixel^2. */
  double waveNumberSquared(int mode) {
    double x = wave(mode % columns, columns);
    double y = wave(mode / columns, rows);
    return x * x + y * y;
  }

  private static double wave(int index, int count) {
    return 2 * Math.PI * Math.min(index, count - index) / count;
  }

  /** In place, real and imaginary part; no factor. */
  void forward(double[][] data) {
    transform(data, TransformType.FORWARD);
  }

  /** In place; the factor 1 / size is here. */
  void inverse(double[][] data) {
    transform(data, TransformType.INVERSE);
  }

  private void transform(double[][] data, TransformType type) {
    double[][] line = {new double[columns], new double[columns]};
    for (int y = 0; y < rows; y++) {
      for (int part = 0; part < 2; part++) {
        System.arraycopy(data[part], y * columns, line[part], 0, columns);
      }
      FastFourierTransformer.transformInPlace(line, DftNormalization.STANDARD, type);
      for (int part = 0; part < 2; part++) {
        System.arraycopy(line[part], 0, data[part], y * columns, columns);
      }
    }
    double[][] down = {new double[rows], new double[rows]};
    for (int x = 0; x < columns; x++) {
      for (int y = 0; y < rows; y++) {
        down[0][y] = data[0][y * columns + x];
        down[1][y] = data[1][y * columns + x];
      }
      FastFourierTransformer.transformInPlace(down, DftNormalization.STANDARD, type);
      for (int y = 0; y < rows; y++) {
        data[0][y * columns + x] = down[0][y];
        data[1][y * columns + x] = down[1][y];
      }
    }
  }

  private static int powerOfTwo(int least) {
    return Math.max(8, Integer.highestOneBit(Math.max(1, least - 1)) << 1);
  }
}
