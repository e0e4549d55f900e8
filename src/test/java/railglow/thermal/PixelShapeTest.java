package railglow.thermal;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

class PixelShapeTest {
  @Test
  void theTableIsTheGaussianToTheBitOnEverySide() {
    PixelShape shape = new PixelShape(2.1, 7);
    assertEquals(2.1, shape.sigma());
    for (int dy = -7; dy <= 7; dy++) {
      for (int dx = -7; dx <= 7; dx++) {
        assertEquals(GaussianFit.shape(dx, dy, 2.1), shape.at(dx, dy), 0);
      }
    }
  }
}
