package railglow.thermal;

/** Order statistics without sorting everything (Hoare, Comm. ACM 4, 1961, p. 321). Stateless. */
public final class Selection {
  private static final int SAMPLE = 4096;

  /** The rank of the median in a sample is off by half the root of its size, standard error. */
  private static final double SAMPLE_ERRORS = 2.5;

  private Selection() {}

  /**
   * The k-th smallest of the first n values, none of them NaN, k from 0; reorders them so that
   * smaller ones come before it and larger ones after.
   */
  public static float kth(float[] values, int n, int k) {
    return kth(values, 0, n, k);
  }

  /** The same where those before one and from another on are known to stand where they belong. */
  private static float kth(float[] values, int from, int to, int k) {
    int low = from;
    int high = to;
    while (high - low > 1) {
      float pivot = middleOfThree(values[low], values[(low + high) >>> 1], values[high - 1]);
      int equal = smallerFirst(values, low, high, pivot);
      if (k < equal) {
        high = equal;
        continue;
      }
      int larger = smallerFirst(values, equal, high, Math.nextUp(pivot));
      if (k < larger || pivot == Float.POSITIVE_INFINITY) {
        return pivot;
      }
      low = larger;
    }
    return values[k];
  }

  /**
   * Puts what is below a limit first; gives where the rest begins. Every value is moved, whether it
   * must be or not: a branch that depends on it would be guessed wrong half of the time.
   */
  private static int smallerFirst(float[] values, int from, int to, float limit) {
    int next = from;
    for (int j = from; j < to; j++) {
      float value = values[j];
      values[j] = values[next];
      values[next] = value;
      next += value < limit ? 1 : 0;
    }
    return next;
  }

  /** The median of the first n, none NaN (the upper one of an even number); reorders the values. */
  public static float median(float[] values, int n) {
    return kth(values, n, n / 2);
  }

  /**
   * The same where it is likely to lie from one limit to another: what lies beyond is put aside in
   * two passes. Wherever it lies it is found.
   */
  public static float medianAbout(float[] values, int n, float low, float high) {
    int k = n / 2;
    int from = smallerFirst(values, 0, n, low);
    if (k < from) {
      return kth(values, 0, from, k);
    }
    int to = smallerFirst(values, from, n, Math.nextUp(high));
    return k < to ? kth(values, from, to, k) : kth(values, to, n, k);
  }

  /**
   * The median of the first n, most of which lie below or above where a sample says it lies: those
   * are only counted. The values keep their order.
   *
   * @param work overwritten, as long
   */
  public static float medianOfMany(float[] values, int n, float[] work) {
    int stride = Math.max(1, n / SAMPLE) | 1;
    int m = 0;
    for (int i = 0; i < n; i += stride) {
      work[m++] = values[i];
    }
    int off = (int) (SAMPLE_ERRORS * Math.sqrt(m)) + 1;
    int first = Math.max(0, m / 2 - off);
    float low = kth(work, m, first);
    float high = kth(work, first, m, Math.min(m - 1, m / 2 + off));
    int below = 0;
    m = 0;
    for (int i = 0; i < n; i++) {
      float value = values[i];
      work[m] = value;
      below += value < low ? 1 : 0;
      m += (value >= low ? 1 : 0) & (value <= high ? 1 : 0);
    }
    int k = n / 2 - below;
    if (k >= 0 && k < m) {
      return kth(work, m, k);
    }
    System.arraycopy(values, 0, work, 0, n);
    return median(work, n);
  }

  private static float middleOfThree(float a, float b, float c) {
    return Math.max(Math.min(a, b), Math.min(Math.max(a, b), c));
  }
}
