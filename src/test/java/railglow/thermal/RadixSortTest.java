package railglow.thermal;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;

class RadixSortTest {
  @Test
  void theOrderIsThatOfTheLibrary() {
    Random random = new Random(5);
    for (int n : new int[] {0, 1, 2, 7, 5000}) {
      float[] values = new float[n];
      for (int i = 0; i < n; i++) {
        values[i] = Float.intBitsToFloat(random.nextInt());
      }
      assertSorted(values);
    }
  }

  @Test
  void zerosInfinitiesAndNoNumbersHaveTheirPlaces() {
    assertSorted(
        new float[] {
          0f,
          -0f,
          Float.NaN,
          Float.NEGATIVE_INFINITY,
          3,
          Float.MIN_VALUE,
          -Float.MIN_VALUE,
          Float.POSITIVE_INFINITY,
          -0f,
          -3
        });
  }

  private static void assertSorted(float[] values) {
    float[] expected = values.clone();
    Arrays.sort(expected);
    RadixSort.sort(values);
    assertArrayEquals(expected, values);
  }
}
