package railglow.board.geometry;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class RegistrationChoiceTest {
  private static final double[][] MARKS = {
    {4, 4}, {116, 4}, {116, 76}, {4, 76}, {84, 46}, {28, 6}, {60, 74}, {10, 40}, {100, 30}
  };

  /** Scale 2, then a radial term about the middle of a 256 x 192 picture. */
  private static double[] seen(double x, double y, double lens) {
    double column = 8 + 2 * x - 127.5;
    double row = 176 - 2 * y - 95.5;
    double stretch = 1 + lens * (column * column + row * row) / (127.5 * 127.5);
    return new double[] {127.5 + column * stretch, 95.5 + row * stretch};
  }

  private static List<RegistrationPoint> points(int count, double lens, double noise, long seed) {
    Random random = new Random(seed);
    List<RegistrationPoint> points = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      double[] pixel = seen(MARKS[i][0], MARKS[i][1], lens);
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

  private static RegistrationChoice choose(List<RegistrationPoint> points) {
    return RegistrationChoice.of(points, 0.2, 256, 192);
  }

  @Test
  void aLensIsTakenInWhenTheResidualsAskForItAndPlacesAreRightAgain() {
    List<RegistrationPoint> points = points(9, -0.04, 0.05, 1);
    RegistrationChoice choice = choose(points);
    assertTrue(choice.notes().get(0).contains("ask for the lens"), choice.notes().toString());
    double[] pixel = seen(78, 31, -0.04);
    BoardPosition place = choice.registration().toBoard(pixel[0], pixel[1]);
    assertEquals(78, place.xMillimetres(), 0.15);
    assertEquals(31, place.yMillimetres(), 0.15);
    double plainMiss =
        Math.abs(Registration.of(points, 0.2).toBoard(pixel[0], pixel[1]).xMillimetres() - 78);
    assertTrue(plainMiss > 0.2, "without the lens term it is off by " + plainMiss + " mm");
  }

  @Test
  void aCameraWithoutDistortionGetsNoLensTermAndNoComplaint() {
    int complaints = 0;
    for (int seed = 0; seed < 300; seed++) {
      complaints += choose(points(9, 0, 0.2, seed)).notes().size();
    }
    // A complaint by chance has a probability of 1 %: 3 of 300 expected, 10 has one of 0.1 %.
    assertTrue(complaints <= 10, complaints + " complaints");
  }

  @Test
  void aPointThatDisagreesIsNamed() {
    List<RegistrationPoint> points = points(8, 0, 0.1, 3);
    RegistrationPoint wrong = points.get(4);
    points.set(
        4,
        new RegistrationPoint(
            wrong.name(),
            wrong.xMillimetres(),
            wrong.yMillimetres(),
            wrong.column() + 5,
            wrong.row()));
    String note = choose(points).notes().get(0);
    assertTrue(note.contains("registration point P4 lies"), note);
  }

  @Test
  void pointsThatAllScatterAreBelievedNoBetterThanTheyAre() {
    RegistrationChoice choice =
        RegistrationChoice.of(points(8, 0, 2.5, 4), 0.2, Double.NaN, Double.NaN);
    assertTrue(choice.notes().get(0).contains("their scatter is believed"));
    assertTrue(choice.registration().pixelSigma() > 1);
  }

  @Test
  void fourPointsSaySoAndWork() {
    RegistrationChoice choice = choose(points(4, 0, 0.2, 5));
    assertTrue(choice.notes().get(0).contains("fit exactly"));
    assertEquals(0, choice.registration().degreesOfFreedom());
  }
}
