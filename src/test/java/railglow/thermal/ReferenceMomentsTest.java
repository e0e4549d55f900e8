package railglow.thermal;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * NIST StRD univariate sets (itl.nist.gov/div898/strd, in the test jar of Commons Math 3.6.1)
 * through the running moments, against their first value as the detector does with its pixels. The
 * planes are floats: certified digits are met to their precision.
 */
class ReferenceMomentsTest {
  @ParameterizedTest
  @CsvSource({
    "NumAcc1, 10000002, 1",
    "NumAcc2, 1.2, 0.1",
    "NumAcc3, 1000000.2, 0.1",
    "NumAcc4, 10000000.2, 0.1",
    "Michelso, 299.852400000000, 0.0790105478190518",
    "Mavro, 2.00185600000000, 0.000429123454003053",
    "Lew, -177.435000000000, 277.332168044316",
    "Lottery, 518.958715596330, 291.699727470969"
  })
  void runningMeanAndScatterMeetTheCertifiedValues(String set, double mean, double deviation)
      throws IOException {
    List<Double> data = read(set);
    ChannelMoments moments = new ChannelMoments(1);
    double offset = data.get(0);
    for (double x : data) {
      float value = (float) (x - offset);
      moments.add(new float[] {value}, new float[] {-value});
    }
    int degrees = data.size() - 1;
    assertEquals(mean, offset + moments.meanI()[0], 2e-6 * deviation + 1e-9 * Math.abs(mean));
    assertEquals(deviation, Math.sqrt(moments.squaresI()[0] / degrees), 2e-5 * deviation);
    assertEquals(
        -deviation * deviation, moments.products()[0] / degrees, 4e-5 * deviation * deviation);
  }

  /**
   * NIST StRD, analysis of variance, set SmLs07 (Simon and Lesage, Comput. Stat. Data Anal. 8,
   * 1989, p. 325): nine treatments of 21 numbers that differ in the fourteenth digit, each its
   * middle, then a tenth less and more by turns. A treatment is a pixel, a number a cycle;
   * certified are F = 21, R squared 0.482758620689655 and a residual deviation of 0.1. A double
   * near 1e12 holds a tenth to 1.2e-4 only.
   */
  @Test
  void scatterWithinAndBetweenPixelsMeetsTheCertifiedAnalysisOfVariance() {
    double[] middles = {0.4, 0.3, 0.5, 0.3, 0.5, 0.3, 0.5, 0.3, 0.5};
    double offset = 1e12 + middles[0];
    ChannelMoments moments = new ChannelMoments(9);
    for (int n = 0; n < 21; n++) {
      float[] plane = new float[9];
      for (int pixel = 0; pixel < 9; pixel++) {
        double step = n == 0 ? 0 : n % 2 == 1 ? -0.1 : 0.1;
        plane[pixel] = (float) (1e12 + middles[pixel] + step - offset);
      }
      moments.add(plane, plane);
    }
    double within = 0;
    double mean = 0;
    for (int pixel = 0; pixel < 9; pixel++) {
      within += moments.squaresI()[pixel];
      mean += moments.meanI()[pixel] / 9;
    }
    double between = 0;
    for (int pixel = 0; pixel < 9; pixel++) {
      between += 21 * Math.pow(moments.meanI()[pixel] - mean, 2);
    }
    assertEquals(0.1, Math.sqrt(within / 180), 2e-4);
    assertEquals(21.0, between / 8 / (within / 180), 0.05);
    assertEquals(0.482758620689655, between / (between + within), 1e-3);
  }

  /**
   * W. J. Riley, Handbook of Frequency Stability Analysis, NIST Special Publication 1065 (2008),
   * section 12.4, table 31: its 1000 points, plain and averaged by 10 and by 100: the largest, the
   * smallest, the median and the standard deviation; the mean of all is 4.897745e-1.
   */
  @ParameterizedTest
  @CsvSource({
    "1, 9.957453e-1, 1.371760e-3, 4.798849e-1, 2.884664e-1",
    "10, 7.003371e-1, 2.545924e-1, 5.047888e-1, 9.296352e-2",
    "100, 5.489368e-1, 4.533354e-1, 4.807261e-1, 3.206656e-2"
  })
  void theHandbooksThousandPointsHaveItsOrderAndScatter(
      int together, double largest, double smallest, double median, double deviation) {
    float[] points = new float[1000 / together];
    ChannelMoments moments = new ChannelMoments(1);
    long n = 1234567890;
    for (int i = 0; i < points.length; i++) {
      double sum = 0;
      for (int j = 0; j < together; j++) {
        sum += n / 2147483647.0;
        n = 16807 * n % 2147483647;
      }
      points[i] = (float) (sum / together);
      moments.add(new float[] {points[i]}, new float[] {-points[i]});
    }
    int half = points.length / 2;
    assertEquals(largest, Selection.kth(points, points.length, points.length - 1), 1e-6);
    assertEquals(smallest, Selection.kth(points, points.length, 0), 1e-6 * smallest);
    double lower = Selection.kth(points, points.length, half - 1);
    assertEquals(median, (lower + Selection.median(points, points.length)) / 2, 1e-6 * median);
    assertEquals(4.897745e-1, moments.meanI()[0], 1e-6);
    double scatter = Math.sqrt(moments.squaresI()[0] / (points.length - 1));
    assertEquals(deviation, scatter, 2e-6 * deviation);
  }

  @Test
  void sumsOfSquaresWouldHaveFailed() throws IOException {
    double sum = 0;
    double squares = 0;
    List<Double> data = read("NumAcc4");
    for (double x : data) {
      sum += x;
      squares += x * x;
    }
    int n = data.size();
    double variance = (squares - sum * sum / n) / (n - 1);
    assertEquals(true, Double.isNaN(Math.sqrt(variance)) || Math.abs(variance - 0.01) > 0.001);
  }

  private static List<Double> read(String set) throws IOException {
    String path = "/org/apache/commons/math3/stat/data/" + set + ".txt";
    List<Double> data = new ArrayList<>();
    try (InputStream in = ReferenceMomentsTest.class.getResourceAsStream(path);
        BufferedReader lines =
            new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8))) {
      int number = 0;
      boolean nist = !set.equals("Lew") && !set.equals("Lottery");
      for (String line = lines.readLine(); line != null; line = lines.readLine()) {
        number++;
        String text = line.trim();
        boolean header = nist ? number <= 60 : text.startsWith("#") || text.contains("=");
        if (!header && !text.isEmpty()) {
          data.add(Double.parseDouble(text.split("\\s+")[0]));
        }
      }
    }
    return data;
  }
}
