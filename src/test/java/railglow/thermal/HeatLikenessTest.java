package railglow.thermal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class HeatLikenessTest {
  private static final DetectionSettings SETTINGS = DetectionSettings.usual(2, 0, 0.05, 4, 20);
  private static final PooledNoise NOISE =
      new PooledNoise(
          1,
          1,
          0,
          Double.POSITIVE_INFINITY,
          Double.POSITIVE_INFINITY,
          1,
          1e-4,
          Double.POSITIVE_INFINITY,
          false);

  private static Optional<NotHeat> judged(double inPhase, double quadrature) {
    return HeatLikeness.objection(inPhase, quadrature, NOISE, 1, SETTINGS);
  }

  @Test
  void anyMixtureOfWarmBodiesIsHeatHoweverStrong() {
    SplittableRandom random = new SplittableRandom(7);
    for (int mixture = 0; mixture < 200; mixture++) {
      double inPhase = 0;
      double quadrature = 0;
      for (int body = 0; body < 4; body++) {
        FirstOrderResponse g = FirstOrderResponse.of(6 * random.nextDouble(), 2);
        double rise = 1e6 * random.nextDouble();
        inPhase += rise * g.inPhase();
        quadrature += rise * g.quadrature();
      }
      assertEquals(Optional.empty(), judged(inPhase, quadrature));
    }
  }

  @Test
  void whatComesBeforeThePulseOrLaterThanAnyBodyIsRefused() {
    assertEquals(Optional.of(NotHeat.AHEAD_OF_THE_PULSE), judged(8, -8));
    assertEquals(Optional.of(NotHeat.LATER_THAN_A_BODY), judged(-20, 4));
    assertEquals(Optional.of(NotHeat.LATER_THAN_A_BODY), judged(-20, -1));
  }

  @Test
  void aSlipOfATwentiethOfAPeriodOrOfNoiseIsNoObjection() {
    double slip = Math.toRadians(18);
    assertEquals(Optional.empty(), judged(1000 * Math.cos(slip), -1000 * Math.sin(slip)));
    assertEquals(Optional.empty(), judged(3, -1.5));
  }

  /** A package of four seconds on a board of one: the product of both responses. */
  @Test
  void heatThatComesThroughAPackageAndABoardIsHeat() {
    FirstOrderResponse g = FirstOrderResponse.of(4, 1, 2);
    assertTrue(g.inPhase() < 0);
    assertEquals(Optional.empty(), judged(1e5 * g.inPhase(), 1e5 * g.quadrature()));
  }

  @Test
  void aScoreThatRestsOnFewOfItsCyclesMissesTheOthers() {
    assertTrue(HeatLikeness.missesCycles(9, 20, 0.5));
    assertFalse(HeatLikeness.missesCycles(9, 20, 1));
    assertFalse(HeatLikeness.missesCycles(5.5, 30, 0.7));
  }
}
