package railglow.thermal;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Random;
import org.junit.jupiter.api.Test;

class WithoutLinesTest {
  private static final int WIDTH = 37;
  private static final int HEIGHT = 22;

  @Test
  void whatIsLeftIsThePlaneWithoutTheMediansOfWarmColumnsAndThenOfWarmRows() {
    Random random = new Random(3);
    float[] plane = new float[WIDTH * HEIGHT];
    for (int i = 0; i < plane.length; i++) {
      plane[i] = (float) random.nextGaussian() + 0.3f * (i % WIDTH % 3) - 0.2f * (i / WIDTH % 4);
    }
    float[] rest = plane.clone();
    for (int x = 0; x < WIDTH; x++) {
      float[] line = new float[HEIGHT];
      for (int row = 0; row < HEIGHT; row++) {
        line[row] = rest[row * WIDTH + x];
      }
      takeOut(rest, x, WIDTH, Math.max(0, Selection.median(line, HEIGHT)), HEIGHT);
    }
    for (int row = 0; row < HEIGHT; row++) {
      float[] line = new float[WIDTH];
      System.arraycopy(rest, row * WIDTH, line, 0, WIDTH);
      takeOut(rest, row * WIDTH, 1, Math.max(0, Selection.median(line, WIDTH)), WIDTH);
    }
    WithoutLines lazily = new WithoutLines(plane, WIDTH, HEIGHT, 1);
    for (int i = plane.length - 1; i >= 0; i -= 5) {
      assertEquals(rest[i], lazily.at(i), "pixel " + i);
    }
  }

  private static void takeOut(float[] plane, int from, int step, float median, int n) {
    for (int k = 0, i = from; k < n; k++, i += step) {
      plane[i] -= median;
    }
  }
}
