package railglow.camera.noise;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import org.junit.jupiter.api.Test;

/**
 * Against the test suites of W. J. Riley, Handbook of Frequency Stability Analysis, NIST Special
 * Publication 1065 (2008), section 12.4, tables 30 and 31: the 9-point set of 1974 and the
 * 1000-point set of its generator.
 */
class AllanDeviationTest {
  private static final double[] NINE = {892, 809, 823, 798, 671, 644, 883, 903, 677};

  @Test
  void theGeneratorIsTheHandbooks() {
    double[] values = thousand();
    assertEquals(395529916 / 2147483647.0, values[1], 1e-15);
    assertEquals(1209410747 / 2147483647.0, values[2], 1e-15);
    assertEquals(633705974 / 2147483647.0, values[3], 1e-15);
    assertEquals(4.897745e-1, Arrays.stream(values).average().orElseThrow(), 1e-7);
    assertEquals(9.957453e-1, Arrays.stream(values).max().orElseThrow(), 1e-7);
    assertEquals(1.371760e-3, Arrays.stream(values).min().orElseThrow(), 1e-9);
    assertEquals(2.884664e-1, Math.sqrt(SeriesStatistics.variance(values)), 1e-7);
  }

  @Test
  void thousandPointsPlain() {
    assertEquals(2.922319e-1, AllanDeviation.plain(thousand(), 1), 1e-7);
    assertEquals(9.965736e-2, AllanDeviation.plain(thousand(), 10), 1e-8);
    assertEquals(3.897804e-2, AllanDeviation.plain(thousand(), 100), 1e-8);
  }

  @Test
  void thousandPointsOverlapping() {
    assertEquals(2.922319e-1, AllanDeviation.overlapping(thousand(), 1), 1e-7);
    assertEquals(9.159953e-2, AllanDeviation.overlapping(thousand(), 10), 1e-8);
    assertEquals(3.241343e-2, AllanDeviation.overlapping(thousand(), 100), 1e-8);
  }

  @Test
  void thousandPointsModified() {
    assertEquals(2.922319e-1, AllanDeviation.modified(thousand(), 1), 1e-7);
    assertEquals(6.172376e-2, AllanDeviation.modified(thousand(), 10), 1e-8);
    assertEquals(2.170921e-2, AllanDeviation.modified(thousand(), 100), 1e-8);
  }

  @Test
  void ninePoints() {
    assertEquals(91.22945, AllanDeviation.plain(NINE, 1), 1e-5);
    assertEquals(115.8082, AllanDeviation.plain(NINE, 2), 1e-4);
    assertEquals(85.95287, AllanDeviation.overlapping(NINE, 2), 1e-5);
    assertEquals(74.78849, AllanDeviation.modified(NINE, 2), 1e-5);
    assertEquals(100.9770, Math.sqrt(SeriesStatistics.variance(NINE)), 1e-4);
  }

  @Test
  void tooFewValuesGiveNoDeviation() {
    assertTrue(Double.isNaN(AllanDeviation.plain(NINE, 5)));
    assertTrue(Double.isNaN(AllanDeviation.overlapping(NINE, 5)));
    assertTrue(Double.isNaN(AllanDeviation.modified(NINE, 4)));
  }

  private static double[] thousand() {
    double[] values = new double[1000];
    long n = 1234567890;
    for (int i = 0; i < values.length; i++) {
      values[i] = n / 2147483647.0;
      n = 16807 * n % 2147483647;
    }
    return values;
  }
}
