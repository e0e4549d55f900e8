package railglow.thermal;

/**
 * One image as the camera gave it, row-major, after the layout was undone and before any
 * arithmetic. Mutable and reused; not thread-safe: exactly one owner at a time.
 */
public sealed interface Samples permits CountSamples, FloatSamples {
  int width();

  int height();

  /** The value at a flat index, counts as 0 to 65535. */
  double valueAt(int index);

  /** Copies the pixels of an image of the same kind and size into this one. */
  void copyFrom(Samples other);

  /** A fresh image of the same kind and size, all zero. */
  Samples newLike();
}
