package railglow.thermal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;

class SelectionTest {
  private final Random random = new Random(5);

  @Test
  void theKthIsWhereSortingPutsIt() {
    for (int n = 1; n < 60; n++) {
      // few different values, so that many are equal, up to all different ones
      for (int different : new int[] {1, 2, 5, 1000}) {
        float[] values = new float[n];
        for (int i = 0; i < n; i++) {
          values[i] = random.nextInt(different) - different / 2;
        }
        checkEveryK(values);
      }
    }
  }

  @Test
  void infiniteValuesAreValues() {
    float up = Float.POSITIVE_INFINITY;
    float down = Float.NEGATIVE_INFINITY;
    checkEveryK(new float[] {up, up, up, up, 1, up, up});
    checkEveryK(new float[] {down, down, 1, down, down, down});
    checkEveryK(new float[] {up, down, up, down, 0, 3, down, up, up});
  }

  @Test
  void valuesAfterTheNthAreNotTouched() {
    float[] values = {3, 1, 2, -9, -8};
    assertEquals(2, Selection.median(values, 3));
    assertEquals(-9, values[3]);
    assertEquals(-8, values[4]);
  }

  @Test
  void theMedianOfManyIsThatOfAllAndLeavesThemInPlace() {
    for (int n : new int[] {1, 2, 9, 4096, 30001}) {
      for (int different : new int[] {1, 3, 1000000}) {
        float[] values = new float[n];
        for (int i = 0; i < n; i++) {
          values[i] = random.nextInt(different) - different / 3;
        }
        assertMedianOfMany(values);
        // in order, the worst for a sample at even steps
        Arrays.sort(values);
        assertMedianOfMany(values);
      }
    }
    // where no value of the sample is near the median
    float[] odd = new float[30000];
    int stride = odd.length / 4096 | 1;
    for (int i = 0; i < odd.length; i++) {
      odd[i] = i % stride == 0 ? 1000 : i % 7;
    }
    assertMedianOfMany(odd);
  }

  @Test
  void aMedianIsFoundWhereverItIsLookedForFirst() {
    for (int n = 1; n < 60; n++) {
      float[] values = new float[n];
      for (int i = 0; i < n; i++) {
        values[i] = random.nextInt(20) - 10;
      }
      float median = Selection.median(values.clone(), n);
      for (float low = -12; low < 12; low += 2.5f) {
        for (float high : new float[] {low, low + 1, low + 8, Float.POSITIVE_INFINITY}) {
          float[] some = values.clone();
          assertEquals(median, Selection.medianAbout(some, n, low, high), low + " to " + high);
          Arrays.sort(some);
          float[] sorted = values.clone();
          Arrays.sort(sorted);
          assertTrue(Arrays.equals(sorted, some), "no value was lost");
        }
      }
    }
  }

  private static void assertMedianOfMany(float[] values) {
    float[] kept = values.clone();
    float median = Selection.medianOfMany(values, values.length, new float[values.length]);
    assertTrue(Arrays.equals(kept, values));
    assertEquals(Selection.median(kept, kept.length), median);
  }

  private static void checkEveryK(float[] values) {
    float[] sorted = values.clone();
    Arrays.sort(sorted);
    for (int k = 0; k < values.length; k++) {
      float[] some = values.clone();
      assertEquals(sorted[k], Selection.kth(some, some.length, k));
      for (int i = 0; i < some.length; i++) {
        assertTrue(i < k ? some[i] <= sorted[k] : some[i] >= sorted[k]);
      }
      Arrays.sort(some);
      assertTrue(Arrays.equals(sorted, some), "no value was lost");
    }
  }
}
