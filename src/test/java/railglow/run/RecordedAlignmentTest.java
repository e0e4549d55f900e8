package railglow.run;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import railglow.camera.Tables;
import railglow.camera.alignment.Alignment;
import railglow.camera.alignment.AlignmentRefusedException;
import railglow.journal.CameraFacts;
import railglow.journal.Entry;
import railglow.journal.FrameStoreWriter;
import railglow.journal.JournalWriter;
import railglow.journal.RunFolder;
import railglow.journal.RunHeader;
import railglow.journal.SampleType;
import railglow.observed.Edge;
import railglow.observed.Frame;
import railglow.observed.OutputState;
import railglow.pulse.PulseSequence;
import railglow.safety.Envelope;
import railglow.safety.StopCause;
import railglow.sim.BenchScenario;
import railglow.sim.BenchScenarios;
import railglow.sim.BenchWorld;
import railglow.sim.picture.FrameFate;
import railglow.sim.truth.TruthLog;
import railglow.thermal.CountSamples;
import railglow.thermal.DetectionSettings;

/**
 * The bench's alignment from the record of its run, on the simulated resistor: 25 Hz, 40 ms of
 * latency, a detector of 10 ms, some frames late or lost, edges anywhere within 4 ms.
 */
class RecordedAlignmentTest {
  private static final double LATENCY = 0.040;
  private static final double LAG = 0.010;
  private static final double PERIOD = 1.713;
  private static final double NANOS = 1e9;
  @TempDir Path root;

  @Test
  void aRunOverTheSimulatedResistorGivesItsLatencyWithinFiveMilliseconds() throws Exception {
    RecordedAlignment.Result result = RecordedAlignment.of(record(1, 14, "resistor"), LAG);
    Alignment found = result.alignment();
    assertEquals(LATENCY, found.latencySeconds(), 0.005, found.toString());
    assertEquals(LATENCY + LAG, found.delaySeconds(), 0.005, found.toString());
    assertEquals(LATENCY, found.latencySeconds(), 3 * found.latencyErrorSeconds());
    assertEquals(10, found.pulses() - 4, "the first four pulses only find the resistor");
    assertEquals(128, result.column(), 2);
    assertEquals(96, result.row(), 2);
  }

  @Test
  void aRunOverNothingThatWarmsIsRefusedWithAdvice() throws Exception {
    RunFolder folder = record(2, 8, "healthy");
    AlignmentRefusedException e =
        assertThrows(AlignmentRefusedException.class, () -> RecordedAlignment.of(folder, LAG));
    assertTrue(e.getMessage().contains("put the resistor in the middle"), e.getMessage());
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
            "true error",
            "time constant",
            "stated error",
            "both together");
    int runs = 20;
    int latencyCovered = 0;
    int delayCovered = 0;
    for (int seed = 1; seed <= runs; seed++) {
      Alignment found = RecordedAlignment.of(record(seed, 52, "resistor"), LAG).alignment();
      double error = found.latencySeconds() - LATENCY;
      double delayError = found.delaySeconds() - LATENCY - LAG;
      table.row(
          "%d | %.1f ms | %.1f ms | %+.1f ms | %.1f ms | %s | %.1f ms",
          seed,
          1e3 * found.latencySeconds(),
          1e3 * found.latencyErrorSeconds(),
          1e3 * error,
          1e3 * found.timeConstantSeconds(),
          found.timeConstantErrorSeconds() > 0
              ? "%.1f ms".formatted(1e3 * found.timeConstantErrorSeconds())
              : "as given",
          1e3 * found.delaySeconds());
      assertEquals(0, error, 0.005, found.toString());
      latencyCovered += Math.abs(error) <= 2 * found.latencyErrorSeconds() ? 1 : 0;
      delayCovered += Math.abs(delayError) <= 2 * found.delayErrorSeconds() ? 1 : 0;
    }
    table.write();
    // Binomial, 20 runs at 95 %: fewer than 17 happen once in 60.
    assertTrue(latencyCovered >= 17, latencyCovered + " of " + runs);
    assertTrue(delayCovered >= 17, delayCovered + " of " + runs);
  }

  /** What the detector's lag really is, is found where the descriptor says nothing of it. */
  @Test
  @Tag("slow")
  void aTimeConstantThatTheDescriptorDoesNotKnowIsMeasured() throws Exception {
    Alignment found = RecordedAlignment.of(record(3, 104, "resistor"), 0.080).alignment();
    assertTrue(found.timeConstantErrorSeconds() > 0, found.toString());
    assertEquals(
        LAG,
        found.timeConstantSeconds(),
        Math.max(0.004, 3 * found.timeConstantErrorSeconds()),
        found.toString());
    assertEquals(LATENCY, found.latencySeconds(), 0.005, found.toString());
  }

  private RunFolder record(long seed, int pulses, String scenarioName) throws IOException {
    BenchScenario scenario = BenchScenarios.named(scenarioName).orElseThrow().withSeed(seed);
    BenchWorld world = new BenchWorld(scenario, 0, new TruthLog());
    int width = scenario.camera().width();
    int height = scenario.camera().height();
    Random random = new Random(seed);
    double place = random.nextDouble();
    double start = 2 + 0.04 * random.nextDouble();
    world.receive("CURR 0.2;VOLT 1", 0);
    RunFolder folder = new RunFolder(root.resolve(scenarioName + seed + "-" + pulses));
    folder.prepare(1L << 20);
    CountSamples image = new CountSamples(width, height);
    try (JournalWriter journal = JournalWriter.create(folder, header(scenario), 1L << 20);
        FrameStoreWriter frames =
            FrameStoreWriter.create(folder.frames(), SampleType.of(image), width, height)) {
      int next = 0;
      double end = start + pulses * PERIOD;
      while (world.exposureNanos(world.nextFrame()) < end * NANOS) {
        long number = world.nextFrame();
        long exposure = world.exposureNanos(number);
        double due = start + PERIOD * (next / 2) + PERIOD / 2 * (next % 2);
        while (next < 2 * pulses && due * NANOS < exposure) {
          boolean on = next % 2 == 0;
          long commanded = Math.round((due - 0.004 * place) * NANOS);
          world.receive("OUTP " + (on ? "ON" : "OFF"), Math.round(due * NANOS));
          journal.append(
              new Entry.EdgeMade(new Edge(next, on, 1, commanded, commanded + 4_000_000)));
          next++;
          due = start + PERIOD * (next / 2) + PERIOD / 2 * (next % 2);
        }
        FrameFate fate = world.camera().fate(number);
        world.takeFrame(exposure, image.counts());
        if (fate == FrameFate.SENT || fate == FrameFate.LATE) {
          double delay = world.camera().latencySeconds(fate) + 0.0005 * random.nextDouble();
          Frame frame = new Frame(image);
          frame.begin(number, exposure + Math.round(delay * NANOS));
          frames.append(frame);
        }
      }
      journal.append(
          new Entry.Closed(
              Math.round(end * NANOS),
              StopCause.PROGRAMME_FINISHED,
              OutputState.PROVEN_OFF,
              0,
              0,
              0,
              0));
    }
    return folder;
  }

  private static RunHeader header(BenchScenario scenario) {
    return new RunHeader(
        RunHeader.CURRENT_FORMAT,
        "test",
        Instant.EPOCH,
        0,
        "alignment",
        "",
        "",
        new PulseSequence("alignment", "test", 1, 0.2, PERIOD, 4, 200, false, 2, 1, 0.05, 90, 60),
        Envelope.OPEN,
        new CameraFacts(
            "simulated camera",
            scenario.camera().width(),
            scenario.camera().height(),
            "uint16",
            scenario.camera().framesPerSecond(),
            0.01,
            -273.15,
            0.05,
            LATENCY,
            LAG,
            true,
            false,
            1),
        "",
        0,
        List.of(),
        DetectionSettings.usual(PERIOD, LAG, 0.05, 4, 200),
        List.of(),
        Map.of(),
        List.of());
  }
}
