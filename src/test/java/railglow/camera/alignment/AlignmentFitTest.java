package railglow.camera.alignment;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import railglow.observed.Edge;

class AlignmentFitTest {
  private static final double LATENCY = 0.045;

  @Test
  void latencyAndTimeConstantOfAStrongSourceAreBothFound() throws AlignmentRefusedException {
    PulsedResistor source = new PulsedResistor(LATENCY, 0.03, 25, 10, 0.01, 0.004, 24, 1);
    Alignment fit = AlignmentFit.fit(source.edges, source.times, source.values, 0.01);
    assertEquals(LATENCY, fit.latencySeconds(), 0.005);
    assertEquals(0.03, fit.timeConstantSeconds(), 0.008);
    assertEquals(0.075, fit.delaySeconds(), 0.004);
    assertTrue(fit.timeConstantErrorSeconds() > 0);
    assertEquals(0.01, fit.noise(), 0.001);
    assertEquals(24, fit.pulses());
  }

  @Test
  void aWeakSourceGivesTheLatencyWithTheTimeConstantAsGiven() throws AlignmentRefusedException {
    PulsedResistor source = new PulsedResistor(LATENCY, 0.01, 25, 1, 0.05, 0.004, 24, 2);
    Alignment fit = AlignmentFit.fit(source.edges, source.times, source.values, 0.01);
    assertEquals(0.01, fit.timeConstantSeconds());
    assertEquals(0, fit.timeConstantErrorSeconds());
    assertEquals(LATENCY, fit.latencySeconds(), 3 * fit.latencyErrorSeconds());
  }

  @Test
  void wideEdgesWidenTheStatedError() throws AlignmentRefusedException {
    PulsedResistor source = new PulsedResistor(LATENCY, 0.01, 25, 10, 0.01, 0.030, 16, 3);
    Alignment fit = AlignmentFit.fit(source.edges, source.times, source.values, 0.5);
    assertTrue(fit.latencyErrorSeconds() > 0.030 / Math.sqrt(12) - 1e-9, fit.toString());
  }

  @Test
  void tooFewPulsesOrTooLittleWarmingAreRefusedWithAdvice() {
    PulsedResistor few = new PulsedResistor(LATENCY, 0.01, 25, 10, 0.01, 0.004, 5, 4);
    AlignmentRefusedException tooFew =
        assertThrows(
            AlignmentRefusedException.class,
            () -> AlignmentFit.fit(few.edges, few.times, few.values, 0.01));
    assertEquals("only 5 pulses; at least 8 are needed", tooFew.getMessage());
    PulsedResistor faint = new PulsedResistor(LATENCY, 0.01, 25, 0.001, 1, 0.004, 12, 5);
    AlignmentRefusedException tooFaint =
        assertThrows(
            AlignmentRefusedException.class,
            () -> AlignmentFit.fit(faint.edges, faint.times, faint.values, 0.5));
    assertTrue(tooFaint.getMessage().contains("give it more power"), tooFaint.getMessage());
  }

  @Test
  void anEdgeIsItsMiddleWithItsWidth() {
    EdgeTime edge = EdgeTime.of(new Edge(0, true, 1, 2_000_000_000L, 2_010_000_000L), 0);
    assertEquals(2.005, edge.seconds(), 1e-12);
    assertEquals(0.010, edge.widthSeconds(), 1e-12);
    assertTrue(edge.on());
  }

  @Test
  @Tag("slow")
  void theStatedErrorCoversTheTruthInRepeatedRuns() throws AlignmentRefusedException {
    int covered = 0;
    int runs = 60;
    for (int seed = 0; seed < runs; seed++) {
      PulsedResistor source = new PulsedResistor(LATENCY, 0.01, 25, 4, 0.03, 0.004, 24, seed);
      Alignment fit = AlignmentFit.fit(source.edges, source.times, source.values, 0.01);
      double error = fit.latencySeconds() - LATENCY;
      assertEquals(0, error, 0.006, "seed " + seed);
      covered += Math.abs(error) <= 2 * fit.latencyErrorSeconds() ? 1 : 0;
    }
    // Binomial, 60 runs at 95 %: fewer than 52 happen once in 200.
    assertTrue(covered >= 52, covered + " of " + runs);
  }
}
