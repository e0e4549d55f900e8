package railglow.thermal;

import java.util.Arrays;

/**
 * A width x height array of floats, row-major; pixel (column, row) is at {@code row * width +
 * column}, row 0 at the top. Integer coordinates are pixel centres.
 *
 * <p>Not thread-safe. Whoever made it owns it; an owner that hands it on must not touch it again.
 */
public final class Plane {
  private final int width;
  private final int height;
  private final float[] values;

  public Plane(int width, int height) {
    this(width, height, new float[Math.multiplyExact(width, height)]);
  }

  /** Wraps the array, not copied. */
  public Plane(int width, int height, float[] values) {
    if (width <= 0 || height <= 0 || values.length != width * height) {
      throw new IllegalArgumentException(
          "a plane of " + width + " x " + height + " can't have " + values.length + " values");
    }
    this.width = width;
    this.height = height;
    this.values = values;
  }

  public int width() {
    return width;
  }

  public int height() {
    return height;
  }

  public float at(int column, int row) {
    return values[row * width + column];
  }

  public void set(int column, int row, float value) {
    values[row * width + column] = value;
  }

  /** The backing array itself, not a copy. */
  public float[] values() {
    return values;
  }

  public Plane copy() {
    return new Plane(width, height, values.clone());
  }

  /** Whether size and every bit of every value agree. */
  public boolean sameBitsAs(Plane other) {
    if (width != other.width || height != other.height) {
      return false;
    }
    for (int i = 0; i < values.length; i++) {
      if (Float.floatToRawIntBits(values[i]) != Float.floatToRawIntBits(other.values[i])) {
        return false;
      }
    }
    return true;
  }

  @Override
  public String toString() {
    return "Plane " + width + " x " + height + " #" + Arrays.hashCode(values);
  }
}
