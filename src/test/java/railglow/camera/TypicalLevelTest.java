package railglow.camera;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;

class TypicalLevelTest {
  @Test
  void itIsTheMedianOfTheNewestSixtyFour() {
    Random random = new Random(4);
    TypicalLevel level = new TypicalLevel();
    double[] values = new double[500];
    for (int i = 0; i < values.length; i++) {
      values[i] =
          switch (random.nextInt(10)) {
            case 0 -> Double.NaN;
            case 1 -> -0.0;
            case 2 -> Double.POSITIVE_INFINITY;
            default -> random.nextInt(20);
          };
      level.add(values[i]);
      double[] newest = Arrays.copyOfRange(values, Math.max(0, i - 63), i + 1);
      Arrays.sort(newest);
      if (i < 7) {
        assertTrue(Double.isNaN(level.median()));
      } else {
        assertEquals(newest[newest.length / 2], level.median(), "after " + i);
      }
    }
  }
}
