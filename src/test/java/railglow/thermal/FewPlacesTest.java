package railglow.thermal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

/** What a look at a large picture costs is bounded by counting, for times depend on the machine. */
class FewPlacesTest {
  private static final int WIDTH = 640;
  private static final int HEIGHT = 512;
  private static final int CYCLES = 6;

  private static final class Counted extends MeanPlanes {
    private int asked;

    Counted(ChannelMoments moments) {
      super(moments, WIDTH, HEIGHT);
    }

    @Override
    double[] smoothed(double x, double y, double sigma, List<Blob> others) {
      asked++;
      return super.smoothed(x, y, sigma, others);
    }
  }

  /** Asked at every warm pixel, a look with a wide source took seconds. */
  @Test
  void lateHeatIsAskedOfPeaksOnly() {
    WhiteCycles cycles =
        new WhiteCycles(WIDTH, HEIGHT, 0.014, 1)
            .with(new WhiteCycles.Source(200, 160, 30, 0.5, 0), 0, 2)
            .with(new WhiteCycles.Source(500, 400, 2, 0.05, 0), 0, 2);
    Detector detector = new Detector(DetectionSettings.usual(2, 0, 0.05, 4, 30), WIDTH, HEIGHT);
    for (int k = 0; k < CYCLES; k++) {
      detector.addCycle(cycles.next());
    }
    Look look = detector.look();
    ScoreField field = new ScoreField(WIDTH, HEIGHT);
    float[] scores = look.significance().values();
    System.arraycopy(scores, 0, field.scores(), 0, scores.length);
    ChannelMoments moments = new ChannelMoments(WIDTH * HEIGHT);
    moments.add(look.inPhase().values(), look.quadrature().values());
    Counted planes = new Counted(moments);
    Blob weaker = new Blob(500, 400, 2, 0.05, 0);
    Candidate at = new Candidate(500, 400, scores[400 * WIDTH + 500], 1);
    new SourceFit(
            ResponseCurve.ofWholeQuarters(DetectionSettings.usual(2, 0, 0.05, 4, 30)),
            planes,
            planes,
            new WidthStatistics[1])
        .mostLateHeat(new FoundSource(at, 0, EarlyStop.NONE, 0, null, weaker, List.of()), field);
    int warm = 0;
    for (int i = 0; i < scores.length; i++) {
      warm += scores[i] >= ScoreField.WORTH_A_SECOND_LOOK && planes.size(i) >= 0.05 ? 1 : 0;
    }
    int pixels = warm;
    assertTrue(pixels > 5000, () -> pixels + " warm pixels");
    assertTrue(planes.asked > 0 && planes.asked < pixels / 20, () -> planes.asked + " places");
    assertEquals(at.score(), field.scores()[400 * WIDTH + 500], "the field is only read");
  }
}
