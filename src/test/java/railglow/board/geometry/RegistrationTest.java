package railglow.board.geometry;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

class RegistrationTest {
  private static final double[][] MARKS = {
    {4, 4}, {116, 4}, {116, 76}, {4, 76}, {84, 46}, {28, 6}, {60, 40}, {10, 50}
  };

  /** A camera looking from a slant: a homography in closed form. */
  private static double[] slanted(double x, double y) {
    double w = 1 + 0.0008 * x - 0.0005 * y;
    return new double[] {(12 + 2.1 * x + 0.05 * y) / w, (180 - 0.08 * x - 2.2 * y) / w};
  }

  private static List<RegistrationPoint> points(int count, double noise, long seed) {
    Random random = new Random(seed);
    List<RegistrationPoint> points = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      double[] pixel = slanted(MARKS[i][0], MARKS[i][1]);
      points.add(
          new RegistrationPoint(
              "P" + i,
              MARKS[i][0],
              MARKS[i][1],
              pixel[0] + noise * random.nextGaussian(),
              pixel[1] + noise * random.nextGaussian()));
    }
    return points;
  }

  @Property(tries = 60, seed = "1")
  void aSlantedViewIsRecoveredFromFourExactPoints(
      @ForAll @DoubleRange(max = 120) double x, @ForAll @DoubleRange(max = 80) double y) {
    Registration registration = Registration.of(points(4, 0, 1), 0.2);
    double[] pixel = slanted(x, y);
    assertEquals(pixel[0], registration.toPixel(x, y).column(), 1e-7);
    assertEquals(pixel[1], registration.toPixel(x, y).row(), 1e-7);
    BoardPosition back = registration.toBoard(pixel[0], pixel[1]);
    assertEquals(x, back.xMillimetres(), 1e-7);
    assertEquals(y, back.yMillimetres(), 1e-7);
  }

  @Test
  void fourPointsFitWhateverTheirErrorAndSoSaySo() {
    Registration four = Registration.of(points(4, 0.5, 3), 0.2);
    assertEquals(0, four.rmsResidualPixels(), 1e-8);
    assertFalse(four.residualsMeanSomething());
    assertEquals(0.2, four.pixelSigma());
    Registration eight = Registration.of(points(8, 0.5, 3), 0.2);
    assertTrue(eight.residualsMeanSomething());
    assertTrue(eight.pixelSigma() > 0.3, "worse residuals than stated are believed");
  }

  /** The stated covariance against the scatter of 600 registrations with fresh errors. */
  @Test
  void theStatedErrorIsTheScatterOfManyRegistrations() {
    double noise = 0.3;
    double[] at = slanted(78, 31);
    Random random = new Random(7);
    double xx = 0;
    double yy = 0;
    double xy = 0;
    int tries = 600;
    for (int i = 0; i < tries; i++) {
      Registration one = Registration.of(points(6, noise, 100 + i), noise);
      BoardPosition seen =
          one.toBoard(at[0] + 0.4 * random.nextGaussian(), at[1] + 0.2 * random.nextGaussian());
      xx += Math.pow(seen.xMillimetres() - 78, 2) / tries;
      yy += Math.pow(seen.yMillimetres() - 31, 2) / tries;
      xy += (seen.xMillimetres() - 78) * (seen.yMillimetres() - 31) / tries;
    }
    BoardPosition stated =
        Registration.of(points(6, 0, 1), noise).toBoard(at[0], at[1], 0.16, 0.04, 0);
    // A variance from 600 tries scatters by sqrt(2/600) = 5.8 %: four of those are allowed.
    assertEquals(stated.xVariance(), xx, 0.23 * stated.xVariance());
    assertEquals(stated.yVariance(), yy, 0.23 * stated.yVariance());
    assertEquals(stated.covariance(), xy, 0.2 * Math.sqrt(xx * yy));
  }

  @Test
  void thePlainScaleGivesMillimetresAtHalfThePixelError() {
    List<RegistrationPoint> exact = new ArrayList<>();
    for (double[] mark : MARKS) {
      exact.add(new RegistrationPoint("P", mark[0], mark[1], 8 + 2 * mark[0], 176 - 2 * mark[1]));
    }
    Registration registration = Registration.of(exact, 1e-6);
    BoardPosition position = registration.toBoard(164, 114, 0.04, 0.16, 0.02);
    assertEquals(78, position.xMillimetres(), 1e-9);
    assertEquals(31, position.yMillimetres(), 1e-9);
    assertEquals(0.01, position.xVariance(), 1e-9);
    assertEquals(0.04, position.yVariance(), 1e-9);
    assertEquals(-0.005, position.covariance(), 1e-9);
    assertEquals(2.0, registration.pixelsPerMillimetre(50, 50), 1e-7);
  }

  @Test
  void tooFewCollinearRepeatedOrInfinitePointsAreRefused() {
    assertThrows(RegistrationException.class, () -> Registration.of(points(3, 0, 1), 0.2));
    List<RegistrationPoint> line = new ArrayList<>();
    List<RegistrationPoint> threeOnALine = new ArrayList<>();
    List<RegistrationPoint> same = new ArrayList<>();
    for (int i = 0; i < 4; i++) {
      line.add(new RegistrationPoint("L" + i, i * 10, i * 5, i * 20, 100 - i * 10));
      same.add(new RegistrationPoint("S" + i, 10, 10, 20, 20));
      threeOnALine.add(
          i < 3
              ? new RegistrationPoint("T" + i, i * 10, 0, i * 20, 100)
              : new RegistrationPoint("T3", 10, 30, 20, 40));
    }
    assertThrows(RegistrationException.class, () -> Registration.of(line, 0.2));
    assertThrows(RegistrationException.class, () -> Registration.of(same, 0.2));
    assertThrows(RegistrationException.class, () -> Registration.of(threeOnALine, 0.2));
    List<RegistrationPoint> broken = points(5, 0, 1);
    broken.set(2, new RegistrationPoint("N", Double.NaN, 0, 0, 0));
    assertThrows(RegistrationException.class, () -> Registration.of(broken, 0.2));
    assertThrows(RegistrationException.class, () -> Registration.of(points(5, 0, 1), 0));
  }

  @Test
  void theSamePointsGiveTheSameBits() {
    BoardPosition first = Registration.of(points(7, 0.2, 5), 0.2).toBoard(100, 50, 0.1, 0.1, 0);
    BoardPosition again = Registration.of(points(7, 0.2, 5), 0.2).toBoard(100, 50, 0.1, 0.1, 0);
    assertEquals(first, again);
  }
}
