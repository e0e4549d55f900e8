package railglow.run.reduction;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import railglow.journal.Findings;
import railglow.run.FindingsMaker;
import railglow.run.InventedEnd;

/** A rehearsal is worth nothing when it leaves out what a find brings with it. */
class InventedEndTest {
  private final InventedRun run = new InventedRun(1_000_000_000L, 0, 1);

  @Test
  void theInventedSpotIsFoundInThePlanesOfTheRunsOwnSize() {
    Reduced reduced = InventedEnd.of(run.header);
    assertFalse(reduced.look().sources().isEmpty());
    assertEquals(32, reduced.look().sources().get(0).column(), 0.5);
    assertEquals(24, reduced.look().sources().get(0).row(), 0.5);
    assertEquals(InventedRun.WIDTH, reduced.look().inPhase().width());
    assertEquals(InventedRun.HEIGHT, reduced.trust().height());
    Findings findings = FindingsMaker.make(run.header, reduced, null, Optional.empty());
    assertEquals(Findings.Verdict.HEAT_FOUND, findings.verdict());
  }

  @Test
  void theSameHeaderGivesTheSameBits() {
    assertTrue(
        InventedEnd.of(run.header)
            .look()
            .inPhase()
            .sameBitsAs(InventedEnd.of(run.header).look().inPhase()));
  }
}
