package railglow.sim.hand;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import railglow.units.QuantityException;

class HandScriptTest {
  @Test
  void movesAreRead() {
    assertEquals(
        new HandMove(HandMove.Kind.TOUCH, "C9", 0.020, 3, 9),
        HandMove.parse("touch:C9=20mohm@3s..9s"));
    assertEquals(
        new HandMove(HandMove.Kind.BOUNCE, "L3", 0.030, 1.5, 1.8),
        HandMove.parse("bounce:L3@1.5s..1.8s"));
    for (String wrong : List.of("touch C9", "press:C9@1s..2s", "touch:C9@2s..1s", "slip:C9@1..2")) {
      assertThrows(QuantityException.class, () -> HandMove.parse(wrong), wrong);
    }
  }

  @Test
  void betweenMovesTheProbeIsInTheAir() {
    HandScript script = new HandScript(List.of(HandMove.parse("touch:C9@1s..2s")));
    assertTrue(script.ohmsAt(0.5) > 1e6);
    assertEquals(0.030, script.ohmsAt(1.5));
    assertTrue(script.ohmsAt(2.0) > 1e6);
    assertEquals("C9", script.at(1.2).orElseThrow().point());
  }

  @Test
  void aBouncingProbeMakesAndBreaks() {
    HandScript script = new HandScript(List.of(HandMove.parse("bounce:C9@0s..1s")));
    int closed = 0;
    for (int i = 0; i < 125; i++) {
      closed += script.ohmsAt(i * 0.008 + 0.004) < 1 ? 1 : 0;
    }
    assertTrue(closed > 30 && closed < 95, closed + " of 125 slots closed");
  }

  @Test
  void aSlippingProbeSwings() {
    HandScript script = new HandScript(List.of(HandMove.parse("slip:C9=10mohm@0s..1s")));
    double least = 1e9;
    double most = 0;
    for (int i = 0; i < 100; i++) {
      least = Math.min(least, script.ohmsAt(i * 0.01));
      most = Math.max(most, script.ohmsAt(i * 0.01));
    }
    assertEquals(0.010, least, 0.002);
    assertEquals(0.200, most, 0.01);
  }
}
