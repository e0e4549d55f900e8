package railglow.thermal;

/** Unsigned 16-bit counts. Not thread-safe. */
public final class CountSamples implements Samples {
  private final int width;
  private final int height;
  private final short[] counts;

  public CountSamples(int width, int height) {
    this(width, height, new short[Math.multiplyExact(width, height)]);
  }

  /** Wraps the array, not copied. */
  public CountSamples(int width, int height, short[] counts) {
    if (width <= 0 || height <= 0 || counts.length != width * height) {
      throw new IllegalArgumentException(
          "an image of " + width + " x " + height + " can't have " + counts.length + " counts");
    }
    this.width = width;
    this.height = height;
    this.counts = counts;
  }

  @Override
  public int width() {
    return width;
  }

  @Override
  public int height() {
    return height;
  }

  /** The backing array itself; read each element as {@code counts[i] & 0xFFFF}. */
  public short[] counts() {
    return counts;
  }

  @Override
  public double valueAt(int index) {
    return counts[index] & 0xFFFF;
  }

  @Override
  public void copyFrom(Samples other) {
    System.arraycopy(((CountSamples) other).counts, 0, counts, 0, counts.length);
  }

  @Override
  public Samples newLike() {
    return new CountSamples(width, height);
  }
}
