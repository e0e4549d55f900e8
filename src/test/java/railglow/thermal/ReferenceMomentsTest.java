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
