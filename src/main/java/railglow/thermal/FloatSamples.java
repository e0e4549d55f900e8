package railglow.thermal;

/** 32-bit floats, for cameras that give temperatures; NaN marks a dead pixel. Not thread-safe. */
public final class FloatSamples implements Samples {
  private final int width;
  private final int height;
  private final float[] values;

  public FloatSamples(int width, int height) {
    this(width, height, new float[Math.multiplyExact(width, height)]);
  }

  /** Wraps the array, not copied. */
  public FloatSamples(int width, int height, float[] values) {
    if (width <= 0 || height <= 0 || values.length != width * height) {
      throw new IllegalArgumentException(
          "an image of " + width + " x " + height + " can't have " + values.length + " values");
    }
    this.width = width;
    this.height = height;
    this.values = values;
  }

  @Override
  public int width() {
    return width;
  }

  @Override
  public int height() {
    return height;
  }

  /** The backing array itself. */
  public float[] values() {
    return values;
  }

  @Override
  public double valueAt(int index) {
    return values[index];
  }

  @Override
  public void copyFrom(Samples other) {
    System.arraycopy(((FloatSamples) other).values, 0, values, 0, values.length);
  }

  @Override
  public Samples newLike() {
    return new FloatSamples(width, height);
  }
}
