package railglow.board.geometry;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import railglow.thermal.Plane;

/** A board with warm and cool places, seen by a camera that is then moved by a known amount. */
class MovedCameraTest {
  private static final int WIDTH = 160;
  private static final int HEIGHT = 120;

  private static Registration straight() {
    List<RegistrationPoint> points = new ArrayList<>();
    double[][] marks = {{5, 5}, {70, 5}, {70, 50}, {5, 50}, {40, 20}, {20, 40}};
    for (double[] mark : marks) {
      points.add(new RegistrationPoint("M", mark[0], mark[1], 2 * mark[0] + 5, 115 - 2 * mark[1]));
    }
    return Registration.of(points, 0.1);
  }

  /** Where a camera moved by (4.3, -2.6) px and turned by half a degree sees a pixel of before. */
  private static double[] moved(double column, double row) {
    double turn = StrictMath.toRadians(0.5);
    double c = column - 80;
    double r = row - 60;
    return new double[] {
      80 + c * StrictMath.cos(turn) - r * StrictMath.sin(turn) + 4.3,
      60 + c * StrictMath.sin(turn) + r * StrictMath.cos(turn) - 2.6
    };
  }

  private static Plane picture(boolean moved, double contrast, long seed) {
    Random places = new Random(7);
    double[][] spots = new double[90][];
    for (int i = 0; i < spots.length; i++) {
      double column = places.nextDouble() * WIDTH;
      double row = places.nextDouble() * HEIGHT;
      double size = 1.5 + 3 * places.nextDouble();
      double height = contrast * (places.nextDouble() - 0.5);
      double[] at = moved ? moved(column, row) : new double[] {column, row};
      spots[i] = new double[] {at[0], at[1], size, height};
    }
    Random noise = new Random(seed);
    Plane plane = new Plane(WIDTH, HEIGHT);
    for (int row = 0; row < HEIGHT; row++) {
      for (int column = 0; column < WIDTH; column++) {
        double value = 23 + 0.02 * noise.nextGaussian();
        for (double[] s : spots) {
          double square = (column - s[0]) * (column - s[0]) + (row - s[1]) * (row - s[1]);
          value += s[3] * StrictMath.exp(-square / (2 * s[2] * s[2]));
        }
        plane.set(column, row, (float) value);
      }
    }
    return plane;
  }

  @Test
  void theNewPlaceOfTheCameraIsFoundFromThePictureAlone() {
    MovedCamera found =
        MovedCamera.of(straight(), picture(false, 3, 1), picture(true, 3, 2), 0.02, 8);
    assertTrue(found.patches() > 20, found.patches() + " places");
    assertTrue(found.residualPixels() < 0.4, found.residualPixels() + " px");
    for (double[] mm : new double[][] {{10, 10}, {40, 30}, {65, 45}}) {
      PixelPosition was = straight().toPixel(mm[0], mm[1]);
      double[] truly = moved(was.column(), was.row());
      PixelPosition now = found.registration().toPixel(mm[0], mm[1]);
      assertEquals(truly[0], now.column(), 0.3);
      assertEquals(truly[1], now.row(), 0.3);
    }
  }

  @Test
  void aCameraThatStayedIsSaidToHaveStayed() {
    MovedCamera found =
        MovedCamera.of(straight(), picture(false, 3, 1), picture(false, 3, 2), 0.02, 8);
    assertTrue(found.movedPixels() < 0.2, found.movedPixels() + " px");
  }

  @Test
  void aPictureWithoutTextureIsRefusedWithTheReason() {
    RegistrationException refused =
        assertThrows(
            RegistrationException.class,
            () -> MovedCamera.of(straight(), picture(false, 0, 1), picture(true, 0, 2), 0.02, 8));
    assertTrue(refused.getMessage().contains("measure the registration points again"));
  }

  @Test
  void anotherBoardIsRefused() {
    Plane other = picture(false, 3, 1);
    for (int i = 0; i < other.values().length / 2; i++) {
      float value = other.values()[i];
      other.values()[i] = other.values()[other.values().length - 1 - i];
      other.values()[other.values().length - 1 - i] = value;
    }
    assertThrows(
        RegistrationException.class,
        () -> MovedCamera.of(straight(), picture(false, 3, 1), other, 0.02, 8));
  }
}
