package railglow.thermal;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

class ColumnsTest {
  @Test
  void everyColumnComesOnceFromTheLeftWithItsValuesFromTheTop() {
    int height = 5;
    for (int width : new int[] {1, 15, 16, 17, 40}) {
      float[] plane = new float[width * height];
      for (int i = 0; i < plane.length; i++) {
        plane[i] = i;
      }
      int[] next = {0};
      Columns.each(
          plane,
          width,
          height,
          (column, values) -> {
            assertEquals(next[0]++, column);
            assertEquals(height, values.length);
            for (int row = 0; row < height; row++) {
              assertEquals(row * plane.length / height + column, values[row]);
            }
          });
      assertEquals(width, next[0]);
    }
  }
}
