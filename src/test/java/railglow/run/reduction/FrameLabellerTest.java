package railglow.run.reduction;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import railglow.observed.Edge;
import railglow.pulse.CycleWindow;

class FrameLabellerTest {
  private static final List<CycleWindow> CYCLES =
      List.of(
          new CycleWindow(0, 1000, 1500, 2000, 2500, 3000),
          new CycleWindow(1, 3000, 3500, 4000, 4500, 5000));
  private final FrameLabeller labeller = new FrameLabeller(CYCLES, 20, 30);

  @Test
  void everyTimeBelongsToOneCycleOrNone() {
    assertEquals(-1, labeller.cycleAt(999));
    assertEquals(0, labeller.cycleAt(1000));
    assertEquals(1, labeller.cycleAt(3000));
    assertEquals(0, labeller.cycleAt(2999));
    assertEquals(-1, labeller.cycleAt(5000));
  }

  @Test
  void aFrameNearAnEdgeIsInTransitionForTheGuardTimeAndTheCamerasOwnLag() {
    labeller.edgeMade(new Edge(0, true, 1, 1502, 1510));
    assertFalse(labeller.inTransition(0, 1479));
    assertTrue(labeller.inTransition(0, 1480));
    assertTrue(labeller.inTransition(0, 1560));
    assertFalse(labeller.inTransition(0, 1561));
  }

  @Test
  void anEdgeMadeLateWidensTheTransitionAndTooLateSpoilsTheCycle() {
    labeller.edgeMade(new Edge(0, true, 1, 1540, 1550));
    labeller.edgeMade(new Edge(1, false, 0, 2500, 2510));
    assertTrue(labeller.inTransition(0, 1590));
    assertEquals("", labeller.edgeFault(0, 60));
    assertTrue(labeller.edgeFault(0, 40).contains("on edge was 0 ms off"));
  }

  @Test
  void anEdgeThatWasNotMadeIsNamed() {
    labeller.edgeMade(new Edge(2, true, 1, 3500, 3505));
    assertEquals("the off edge was not made", labeller.edgeFault(1, 100));
  }

  @Test
  void edgesOutsideTheTimelineAreNobodys() {
    labeller.edgeMade(new Edge(-1, false, 0, 10, 20));
    labeller.edgeMade(new Edge(99, false, 0, 10, 20));
    assertEquals("the on edge was not made", labeller.edgeFault(0, 100));
  }

  @Test
  void edgesAreTakenForMadeBetweenCommandAndConfirmation() {
    labeller.edgeMade(new Edge(2, true, 1, 3502, 3510));
    labeller.edgeMade(new Edge(3, false, 0, 4500, 4520));
    FrameLabeller.EdgesMade made = labeller.edgesMade(1);
    assertArrayEquals(new long[] {3506, 4510}, made.nanos());
    assertFalse(made.onBefore());
  }
}
