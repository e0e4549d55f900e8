package railglow.thermal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class PeriodChoiceTest {
  private static double white(double seconds) {
    return 0.05 / Math.sqrt(25 * seconds);
  }

  private static double drifting(double seconds) {
    // white and random walk: Riley, NIST SP 1065 (2008), table of slopes -1/2 and +1/2
    return Math.hypot(white(seconds), 0.01 * Math.sqrt(seconds / 3));
  }

  @Test
  void inWhiteNoiseAPeriodIsWorthWhatTheBodyShowsOfItsRise() {
    double longer = PeriodChoice.worth(PeriodChoiceTest::white, 8, 0.5, 0);
    double shorter = PeriodChoice.worth(PeriodChoiceTest::white, 2, 0.5, 0);
    double shown = FirstOrderResponse.of(0.5, 8).size() / FirstOrderResponse.of(0.5, 2).size();
    assertEquals(shown, longer / shorter, 1e-12);
  }

  @Test
  void driftAsksForShorterPeriodsAndSlowBodiesForLonger() {
    double fast = PeriodChoice.best(PeriodChoiceTest::drifting, 0.1, 0, 0.5, 60);
    double slow = PeriodChoice.best(PeriodChoiceTest::drifting, 1, 0, 0.5, 60);
    double slowInWhite = PeriodChoice.best(PeriodChoiceTest::white, 1, 0, 0.5, 60);
    assertTrue(fast < slow && slow < slowInWhite, fast + " s, " + slow + " s, " + slowInWhite);
  }

  @Test
  void unknownNoiseGivesNoPeriod() {
    assertTrue(Double.isNaN(PeriodChoice.best(t -> Double.NaN, 1, 0, 0.5, 60)));
  }
}
