package railglow.run;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import railglow.camera.Tables;
import railglow.camera.alignment.Alignment;
import railglow.camera.alignment.AlignmentRefusedException;
import railglow.camera.alignment.SupplyRise;
import railglow.journal.RunFolder;
import railglow.sim.BenchScenario;
import railglow.sim.BenchScenarios;

/**
 * The bench's alignment from the record of its run, on the simulated resistor: 25 Hz, 40 ms of
 * latency, a detector of 10 ms, some frames late or lost, edges anywhere within 4 ms, a supply that
 * takes a millisecond to its level.
 */
class RecordedAlignmentTest {
  private static final double LATENCY = ResistorRun.LATENCY_SECONDS;
  private static final double LAG = ResistorRun.LAG_SECONDS;
  @TempDir Path root;

  @Test
  void inEachOfThreeShortRunsTheLatencyIsRightWithinItsErrorAndFiveMilliseconds() throws Exception {
    double supplyRise = ResistorRun.supplyRiseSeconds(resistor(1));
    for (int seed = 1; seed <= 3; seed++) {
      RecordedAlignment.Result result = RecordedAlignment.of(record(seed, 14), LAG);
      Alignment found = result.alignment();
      assertEquals(LATENCY, found.latencySeconds(), 0.005, found.toString());
      assertEquals(LATENCY + LAG, found.delaySeconds(), 0.005, found.toString());
      double error = found.latencySeconds() - LATENCY - supplyRise;
      assertEquals(0, error, 2 * found.latencyErrorSeconds(), found.toString());
      assertEquals(10, found.pulses() - 4, "the first four pulses only find the resistor");
      assertEquals(128, result.column(), 2);
      assertEquals(96, result.row(), 2);
    }
  }

  @Test
  void aRunOverNothingThatWarmsIsRefusedWithAdvice() throws Exception {
    BenchScenario healthy = BenchScenarios.named("healthy").orElseThrow().withSeed(2);
    RunFolder folder = ResistorRun.record(healthy, 8, root);
    AlignmentRefusedException e =
        assertThrows(AlignmentRefusedException.class, () -> RecordedAlignment.of(folder, LAG));
    assertTrue(e.getMessage().contains("put the resistor in the middle"), e.getMessage());
  }

  @Test
  void theSuppliesOwnRiseIsBoundedByTheReadings() throws Exception {
    double really = ResistorRun.supplyRiseSeconds(resistor(4));
    SupplyRise bounds = RecordedAlignment.of(record(4, 12), LAG).supplyRise();
    assertTrue(bounds.leastSeconds() <= really && really <= bounds.mostSeconds(), bounds + "");
    assertTrue(bounds.mostSeconds() < 0.010, bounds.toString());
  }

  @Test
  @Tag("slow")
  void inRepeatedRunsTheStatedErrorsCoverTheTruth() throws Exception {
    Tables table =
        new Tables(
            "alignment-recorded",
            "seed",
            "latency",
            "stated error",
            "off the camera's",
            "off camera's and supply's",
            "supply's rise by its readings",
            "time constant");
    double supplyRise = ResistorRun.supplyRiseSeconds(resistor(1));
    int runs = 20;
    int covered = 0;
    for (int seed = 1; seed <= runs; seed++) {
      RecordedAlignment.Result result = RecordedAlignment.of(record(seed, 52), LAG);
      Alignment found = result.alignment();
      double error = found.latencySeconds() - LATENCY - supplyRise;
      table.row(
          "%d | %.1f ms | %.1f ms | %+.1f ms | %+.1f ms | %.1f to %.1f ms | %.1f ms, %s",
          seed,
          1e3 * found.latencySeconds(),
          1e3 * found.latencyErrorSeconds(),
          1e3 * (found.latencySeconds() - LATENCY),
          1e3 * error,
          1e3 * result.supplyRise().leastSeconds(),
          1e3 * result.supplyRise().mostSeconds(),
          1e3 * found.timeConstantSeconds(),
          found.timeConstantErrorSeconds() > 0 ? "fitted" : "as given");
      assertEquals(LATENCY, found.latencySeconds(), 0.005, found.toString());
      double least = found.latencySeconds() - result.supplyRise().mostSeconds();
      double most = found.latencySeconds() - result.supplyRise().leastSeconds();
      assertTrue(least - 2 * found.latencyErrorSeconds() <= LATENCY, found.toString());
      assertTrue(most + 2 * found.latencyErrorSeconds() >= LATENCY, found.toString());
      covered += Math.abs(error) <= 2 * found.latencyErrorSeconds() ? 1 : 0;
    }
    table.write();
    // Binomial, 20 runs at 95 %: fewer than 17 happen once in 60.
    assertTrue(covered >= 17, covered + " of " + runs);
  }

  /** What the detector's lag really is, is found where the descriptor says nothing of it. */
  @Test
  @Tag("slow")
  void aTimeConstantThatTheDescriptorDoesNotKnowIsMeasured() throws Exception {
    Alignment found = RecordedAlignment.of(record(3, 104), 0.080).alignment();
    assertTrue(found.timeConstantErrorSeconds() > 0, found.toString());
    assertEquals(
        LAG,
        found.timeConstantSeconds(),
        Math.max(0.004, 3 * found.timeConstantErrorSeconds()),
        found.toString());
    assertEquals(LATENCY, found.latencySeconds(), 0.005, found.toString());
  }

  private RunFolder record(long seed, int pulses) throws IOException {
    return ResistorRun.record(resistor(seed), pulses, root);
  }

  private static BenchScenario resistor(long seed) {
    return BenchScenarios.named("resistor").orElseThrow().withSeed(seed);
  }
}
