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
