package railglow.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Test;
import railglow.board.Board;
import railglow.config.BoardFile;
import railglow.journal.Findings;
import railglow.journal.SampleRun;
import railglow.pulse.PulseSequence;
import railglow.run.FindingsMaker;
import railglow.run.reduction.Reduced;
import railglow.thermal.Look;

/** From the simulated picture to everything that is said of a run, in invented time. */
class FaultsToFindingsTest {
  private static Findings hunted(String scenario, double volts, double amperes) throws Exception {
    PulseSequence pulses =
        new PulseSequence("t", "t", volts, amperes, 2, 4, 12, false, 2, 1, 0.05, 70, 30);
    Look look = new BenchRun(BenchScenarios.named(scenario).orElseThrow(), pulses).toTheEnd();
    Board board = BoardFile.read(Path.of("docs/examples/hx12/board.yaml")).board();
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
}
