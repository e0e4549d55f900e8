package railglow.board.ladder;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.apache.commons.math3.stat.regression.SimpleRegression;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class StraightLineTest {
  /**
   * NIST StRD, data set Norris (https://www.itl.nist.gov/div898/strd/lls/data/Norris.shtml): y, x.
   */
  private static final double[][] NORRIS = {
    {0.1, 0.2}, {338.8, 337.4}, {118.1, 118.2}, {888.0, 884.6}, {9.2, 10.1}, {228.1, 226.5},
    {668.5, 666.3}, {998.5, 996.3}, {449.1, 448.6}, {778.9, 777.0}, {559.2, 558.2}, {0.3, 0.4},
    {0.1, 0.6}, {778.1, 775.5}, {668.8, 666.9}, {339.3, 338.0}, {448.9, 447.5}, {10.8, 11.6},
    {557.7, 556.0}, {228.3, 228.1}, {998.0, 995.8}, {888.8, 887.6}, {119.6, 120.2}, {0.3, 0.3},
    {0.6, 0.3}, {557.6, 556.8}, {339.3, 339.1}, {888.0, 887.2}, {998.5, 999.0}, {778.9, 779.0},
    {10.2, 11.1}, {117.6, 118.3}, {228.9, 229.2}, {668.4, 669.1}, {449.2, 448.9}, {0.2, 0.5}
  };

  private static double[] column(int index) {
    double[] values = new double[NORRIS.length];
    for (int i = 0; i < values.length; i++) {
      values[i] = NORRIS[i][index];
    }
    return values;
  }

  @Test
  void theNorrisDataGiveNistsCertifiedValues() {
    StraightLine line = StraightLine.unweighted(column(1), column(0));
    assertEquals(-0.262323073774029, line.intercept(), 1e-12);
    assertEquals(1.00211681802045, line.slope(), 1e-13);
    assertEquals(0.232818234301152, line.interceptSigma(), 1e-12);
    assertEquals(0.429796848199937E-03, line.slopeSigma(), 1e-15);
    assertEquals(0.884796396144373, Math.sqrt(line.chiSquared() / line.degreesOfFreedom()), 1e-12);
  }

  /** The certified analysis of variance of the same set: F, regression and residual squares. */
  @Test
  void theNorrisDataGiveNistsAnalysisOfVariance() {
    StraightLine line = StraightLine.unweighted(column(1), column(0));
    assertEquals(34, line.degreesOfFreedom());
    assertEquals(26.6173985294224, line.chiSquared(), 1e-11);
    double f = Math.pow(line.slope() / line.slopeSigma(), 2);
    assertEquals(5436385.54079785, f, 1e-9 * f);
    double regression = f * line.chiSquared() / line.degreesOfFreedom();
    assertEquals(4255954.13232369, regression, 1e-9 * regression);
  }

  /**
   * W. J. Riley, Handbook of Frequency Stability Analysis, NIST Special Publication 1065 (2008),
   * section 12.4, tables 30 and 31: slope and intercept of its 1000 points, plain and averaged by
   * 10 and 100, and of its 9 points; points counted from 1.
   */
  @ParameterizedTest
  @CsvSource({
    "1, 6.490910e-6, 4.865258e-1",
    "10, 5.979804e-5, 4.867547e-1",
    "100, 1.056376e-3, 4.839644e-1"
  })
  void theHandbooksThousandPointsHaveItsTrend(int together, double slope, double intercept) {
    double[] x = new double[1000 / together];
    double[] y = new double[x.length];
    long n = 1234567890;
    for (int i = 0; i < 1000; i++) {
      y[i / together] += n / 2147483647.0 / together;
      x[i / together] = i / together + 1;
      n = 16807 * n % 2147483647;
    }
    StraightLine line = StraightLine.unweighted(x, y);
    assertEquals(slope, line.slope(), 1e-6 * slope);
    assertEquals(intercept, line.intercept(), 1e-6 * intercept);
  }

  /** Errors of the nine by scipy.stats.linregress 1.17.1(range(1, 10), y): stderr. */
  @Test
  void theHandbooksNinePointsHaveItsTrend() {
    StraightLine line =
        StraightLine.unweighted(
            new double[] {1, 2, 3, 4, 5, 6, 7, 8, 9},
            new double[] {892, 809, 823, 798, 671, 644, 883, 903, 677});
    assertEquals(-10.20, line.slope(), 1e-10);
    assertEquals(839.8889, line.intercept(), 1e-4);
    assertEquals(13.392294238611433, line.slopeSigma(), 1e-10);
    assertEquals(75.36264939717988, line.interceptSigma(), 1e-9);
  }

  @Test
  void commonsMathAgrees() {
    SimpleRegression other = new SimpleRegression();
    for (double[] point : NORRIS) {
      other.addData(point[1], point[0]);
    }
    StraightLine line = StraightLine.unweighted(column(1), column(0));
    assertEquals(other.getSlope(), line.slope(), 1e-13);
    assertEquals(other.getIntercept(), line.intercept(), 1e-12);
    assertEquals(other.getSlopeStdErr(), line.slopeSigma(), 1e-12);
  }

  @Test
  void aPointWithALargerErrorCountsLess() {
    StraightLine line =
        StraightLine.of(
            new double[] {0, 1, 2, 3}, new double[] {0, 1, 2, 9}, new double[] {1, 1, 1, 1e6});
    assertEquals(1, line.slope(), 1e-9);
    assertEquals(0, line.intercept(), 1e-9);
    assertEquals(Math.sqrt(1.0 / 3 + 1.0 / 2), line.interceptSigma(), 1e-9);
    assertEquals(line.interceptSigma(), line.sigmaAt(0), 1e-12);
    assertEquals(Math.sqrt(1.0 / 3), line.sigmaAt(1), 1e-9);
  }

  @Test
  void aLineThroughOnePlaceIsRefused() {
    double[] same = {1, 1, 1};
    assertThrows(IllegalArgumentException.class, () -> StraightLine.of(same, same, same));
    assertThrows(
        IllegalArgumentException.class,
        () -> StraightLine.of(new double[] {1}, new double[] {1}, new double[] {1}));
  }
}
