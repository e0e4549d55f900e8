package railglow.thermal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class CallsNothingTest {
  private static final int CYCLES = 24;
  private static final DetectionSettings SETTINGS = DetectionSettings.usual(2, 0, 0.05, 4, CYCLES);

  @Test
  void whereNothingIsCalledThatIsKnownWithoutALook() {
    WhiteCycles cycles = new WhiteCycles(64, 48, 0.014, 7);
    Detector detector = new Detector(SETTINGS, 64, 48);
    for (int k = 1; k <= CYCLES; k++) {
      detector.addCycle(cycles.next());
      boolean nothing = detector.surelyCallsNothing();
      double bound = detector.scoreToCall();
      assertTrue(nothing, "cycle " + k);
      assertTrue(detector.look().sources().isEmpty(), "cycle " + k);
      assertEquals(bound, detector.scoreToCall());
    }
  }

  @Test
  void whatIsCalledIsNeverTakenForNothing() {
    WhiteCycles cycles =
        new WhiteCycles(64, 48, 0.014, 7).with(new WhiteCycles.Source(30, 20, 2, 0.012, 0), 0, 2);
    Detector detector = new Detector(SETTINGS, 64, 48);
    int called = 0;
    for (int k = 1; k <= CYCLES; k++) {
      detector.addCycle(cycles.next());
      boolean nothing = detector.surelyCallsNothing();
      boolean calls = !detector.look().sources().isEmpty();
      assertFalse(nothing && calls, "cycle " + k);
      called += calls ? 1 : 0;
    }
    assertTrue(called > 0 && called < CYCLES, called + " called");
  }
}
