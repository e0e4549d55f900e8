package railglow.thermal;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static railglow.thermal.SmallPicture.HEIGHT;
import static railglow.thermal.SmallPicture.PIXELS;
import static railglow.thermal.SmallPicture.WIDTH;
import static railglow.thermal.SmallPicture.noise;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Filters laid out for the compiler give what the plain loop of the sum gives, to the bit. */
class FastFiltersTest {
  @Test
  void aKernelSumIsThatOfThePlainLoopToTheBit() {
    float[] plane = noise(1);
    for (int radius : new int[] {1, 2, 5, 18, 60}) {
      float[] taps = new float[radius + 1];
      for (int t = 0; t <= radius; t++) {
        taps[t] = (float) Math.exp(-t * t / (0.2 * radius * radius));
      }
      float[] sums = new float[PIXELS];
      new SymmetricKernel(WIDTH, HEIGHT, radius)
          .sum(
              plane,
              taps,
              Area.whole(WIDTH, HEIGHT),
              (row, line) -> System.arraycopy(line, 0, sums, row * WIDTH, WIDTH));
      assertArrayEquals(plainSum(plane, taps), sums, "radius " + radius);
    }
  }

  @Test
  void anAreaIsFilteredToTheBitsOfTheWholePicture() {
    float[] plane = noise(2);
    MatchedFilter filter = new MatchedFilter(WIDTH, HEIGHT, 3);
    CommonParts.Removed removed = new CommonParts.Removed(1, 0.7, 0.4);
    float[] whole = new float[PIXELS];
    filter.apply(plane, whole, removed);
    for (Area area :
        List.of(new Area(0, 0, 5, 5), new Area(20, 13, 41, 30), new Area(50, 40, WIDTH, HEIGHT))) {
      float[] part = new float[PIXELS];
      filter.apply(plane, part, removed, area);
      for (int i = 0; i < PIXELS; i++) {
        boolean inside =
            i % WIDTH >= area.left()
                && i % WIDTH < area.right()
                && i / WIDTH >= area.top()
                && i / WIDTH < area.bottom();
        assertEquals(inside ? whole[i] : 0, part[i], 0f, area + " at " + i);
      }
    }
  }

  @Test
  void allWidthsTogetherAreFilteredToTheBitsOfEachAlone() {
    // the widest kernel is higher than the picture
    double[] sigmas = {0.3, 1.5, 2.1, 3, 4.2, 6, 20};
    WidthPlanes[] widths = new WidthPlanes[sigmas.length];
    Arrays.setAll(widths, w -> new WidthPlanes(WIDTH, HEIGHT, sigmas[w]));
    CommonParts.Removed removedI = new CommonParts.Removed(1, 0.7, 0.4);
    CommonParts.Removed removedC = new CommonParts.Removed(1, 0.2, 0);
    FilterBank bank = new FilterBank(WIDTH, HEIGHT, widths);
    for (int cycle = 0; cycle < 2; cycle++) {
      float[] inPhase = noise(70 + cycle);
      float[] quadrature = noise(80 + cycle);
      bank.setLast(new ReducedCycle(inPhase, quadrature), removedI, removedC);
      for (WidthPlanes each : widths) {
        float[] alone = new float[PIXELS];
        each.filter().apply(inPhase, alone, removedI);
        assertArrayEquals(alone, each.lastI(), "width " + each.filter().sigma());
        each.filter().apply(quadrature, alone, removedC);
        assertArrayEquals(alone, each.lastC(), "width " + each.filter().sigma());
      }
    }
  }

  private static float[] plainSum(float[] plane, float[] taps) {
    float[] rows = new float[PIXELS];
    float[] all = new float[PIXELS];
    for (int i = 0; i < PIXELS; i++) {
      int x = i % WIDTH;
      rows[i] = taps[0] * plane[i];
      for (int t = 1; t < taps.length; t++) {
        float left = x - t >= 0 ? plane[i - t] : 0;
        float right = x + t < WIDTH ? plane[i + t] : 0;
        rows[i] += taps[t] * (left + right);
      }
    }
    for (int i = 0; i < PIXELS; i++) {
      int row = i / WIDTH;
      all[i] = taps[0] * rows[i];
      for (int t = 1; t < taps.length; t++) {
        float above = row - t >= 0 ? rows[i - t * WIDTH] : 0;
        float below = row + t < HEIGHT ? rows[i + t * WIDTH] : 0;
        all[i] += taps[t] * (above + below);
      }
    }
    return all;
  }
}
