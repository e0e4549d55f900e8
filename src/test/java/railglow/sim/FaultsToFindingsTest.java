package railglow.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import railglow.board.Board;
import railglow.board.Entered;
import railglow.board.HeatPath;
import railglow.config.BoardFile;
import railglow.journal.Findings;
import railglow.journal.SampleRun;
import railglow.pulse.PulseSequence;
import railglow.run.FindingsMaker;
import railglow.run.reduction.Reduced;
import railglow.thermal.Look;

/** From the simulated picture to everything that is said of a run, in invented time. */
class FaultsToFindingsTest {
  private static Findings hunted(String scenario, double volts, double amperes, String... clips)
      throws Exception {
    PulseSequence pulses =
        new PulseSequence("t", "t", volts, amperes, 2, 4, 12, false, 2, 1, 0.05, 70, 30);
    Look look = new BenchRun(BenchScenarios.named(scenario).orElseThrow(), pulses).toTheEnd();
    Board stated = BoardFile.read(Path.of("docs/examples/hx12/board.yaml")).board();
    Board board =
        new Entered(OptionalDouble.empty(), OptionalDouble.empty(), List.of(clips)).on(stated);
    Reduced reduced = new Reduced(look, null, null, 12, 0, Map.of(), 1, 0.17, 0.17);
    return FindingsMaker.make(SampleRun.header(), reduced, board);
  }

  /** The ferrite gets warmer than the capacitor behind it, so its source is the stronger one. */
  @Test
  void headlineAndNextStepSpeakOfTheSamePartThoughAnotherPlaceIsWarmer() throws Exception {
    Findings findings = hunted("warm-path", 1.2, 0.5);
    assertEquals(1, findings.lead().source());
    assertEquals("C39", findings.lead().suspect().orElseThrow().part());
    assertTrue(findings.headline().startsWith("Heat at C39"), findings.headline());
    assertTrue(
        findings
            .headline()
            .contains(
                "swings by " + FindingsMaker.rise(findings.sources().get(1).swingKelvin(), "K")),
        findings.headline());
    assertEquals(
        "Lift C39; 3V3 should then read 45 ohm or more. Read 1V8 and 1V1_CORE too: their converters"
            + " are fed from 3V3 and may have suffered with it.",
        findings.nextStep());
  }

  @Test
  void heatWhereTheClipSitsIsSaidToBeItsContactAndTheFaultElsewhereLeads() throws Exception {
    Findings findings = hunted("dead-short", 0.5, 2, "C9");
    assertTrue(findings.headline().startsWith("Heat at C37"), findings.headline());
    assertEquals(1, findings.paths().size(), findings.paths().toString());
    HeatPath clip = findings.paths().get(0);
    assertEquals(HeatPath.Kind.CLIP, clip.kind());
    assertEquals(1, clip.sourceIndex());
    assertFalse(clip.leads());
    assertTrue(
        findings.suspects().stream()
            .filter(suspect -> suspect.part().equals("C9"))
            .allMatch(suspect -> suspect.reason().contains("the clip on C9 sits there")),
        findings.suspects().toString());
    assertTrue(
        findings
            .nextStep()
            .contains("The heat where the clip on C9 sits is most likely its contact."),
        findings.nextStep());
  }

  /** The same heat with the clip said to be where the fault is: nothing else explains it. */
  @Test
  void whereTheOnlyHeatIsAtTheClipAnotherInjectionPointIsAskedFor() throws Exception {
    Findings findings = hunted("hx12", 1.2, 0.5, "C37.1");
    assertEquals(HeatPath.Kind.CLIP, findings.lead().path().orElseThrow().kind());
    assertTrue(
        findings.headline().startsWith("Heat where the clip on C37 pin 1 sits"),
        findings.headline());
    assertTrue(
        findings
            .nextStep()
            .contains(
                "To be sure clip on at another point of 3V3 and compare; what stays hot at both"
                    + " points is the fault."),
        findings.nextStep());
    assertFalse(findings.nextStep().contains("Lift"), findings.nextStep());
  }

  /** The trace of 20 mm runs along x = 72.5 mm from y = 16 mm to 36 mm. */
  @Test
  void longHeatOnNoPartIsSaidToBeATraceAndAnotherInjectionPointIsAskedFor() throws Exception {
    Findings findings = hunted("long-trace", 0.8, 1);
    HeatPath trace = findings.lead().path().orElseThrow();
    assertEquals(HeatPath.Kind.TRACE, trace.kind());
    Matcher ends =
        Pattern.compile("along (\\d+) mm, from \\((\\d+), (\\d+)\\) mm to \\((\\d+), (\\d+)\\) mm")
            .matcher(trace.place());
    assertTrue(ends.matches(), trace.place());
    assertEquals(20, Integer.parseInt(ends.group(1)), 5);
    assertEquals(72.5, Integer.parseInt(ends.group(2)), 1.5);
    assertEquals(72.5, Integer.parseInt(ends.group(4)), 1.5);
    assertEquals(
        52, Integer.parseInt(ends.group(3)) + Integer.parseInt(ends.group(5)), 3, trace.place());
    assertTrue(findings.headline().startsWith("Heat along "), findings.headline());
    assertTrue(
        findings.nextStep().contains("inject at another point of 3V3, beyond an end of it, and"),
        findings.nextStep());
  }

  @ParameterizedTest
  @CsvSource({
    "hx12, 1.2, 0.5",
    "close-leaks, 1.2, 0.5",
    "two-leaks, 1.2, 0.5",
    "leaky-junction, 1.2, 0.5",
    "warm-path, 1.2, 0.5",
    "dead-short, 0.5, 2"
  })
  void theHeatOfPartsIsNoTrace(String scenario, double volts, double amperes) throws Exception {
    Findings findings = hunted(scenario, volts, amperes);
    assertFalse(findings.sources().isEmpty());
    assertEquals(List.of(), findings.paths());
  }
}
