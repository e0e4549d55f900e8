package railglow.thermal;

/** Order statistics without sorting everything (Hoare, Comm. ACM 4, 1961, p. 321). Stateless. */
public final class Selection {
  private Selection() {}

  /**
   * The k-th smallest of the first n values, none of them NaN, k from 0; reorders them so that
   * smaller ones come before it and larger ones after.
   */
  public static float kth(float[] values, int n, int k) {
    int low = 0;
    int high = n - 1;
    while (low < high) {
      float pivot = middleOfThree(values[low], values[(low + high) >>> 1], values[high]);
      int i = low;
      int j = high;
      while (i <= j) {
        while (values[i] < pivot) {
          i++;
        }
        while (values[j] > pivot) {
          j--;
        }
        if (i <= j) {
          float swap = values[i];
          values[i] = values[j];
          values[j] = swap;
          i++;
          j--;
        }
      }
      if (k <= j) {
        high = j;
      } else if (k >= i) {
        low = i;
      } else {
        break;
      }
    }
    return values[k];
  }

  /** The median of the first n, none NaN (the upper one of an even number); reorders the values. */
  public static float median(float[] values, int n) {
    return kth(values, n, n / 2);
  }

  private static float middleOfThree(float a, float b, float c) {
    return Math.max(Math.min(a, b), Math.min(Math.max(a, b), c));
  }
}
