package railglow.run.reduction;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Set;
import org.junit.jupiter.api.Test;
import railglow.observed.Edge;
import railglow.observed.Regulation;
import railglow.observed.SupplyReading;

class SupplyLevelsTest {
  private static final long MS = 1_000_000L;
  private final SupplyLevels levels = new SupplyLevels(0.1);

  private static SupplyReading reading(long startMs, double volts, double amperes) {
    return new SupplyReading(
        startMs * MS,
        (startMs + 10) * MS,
        volts,
        amperes,
        true,
        Regulation.CONSTANT_VOLTAGE,
        Set.of());
  }

  @Test
  void theLeadsShareIsTakenOffTheVoltage() {
    levels.edgeMade(new Edge(0, true, 2, 0, 5 * MS));
    levels.reading(reading(100, 2.0, 0.5));
    levels.reading(reading(120, 2.0, 0.5));
    levels.edgeMade(new Edge(1, false, 0, 200 * MS, 205 * MS));
    assertEquals(1.95, levels.meanVolts(), 1e-12);
    assertEquals(0.5, levels.meanAmperes(), 1e-12);
    assertEquals(0.975, levels.meanWatts(), 1e-12);
  }

  @Test
  void readingsThatTouchAnEdgeDoNotCount() {
    levels.edgeMade(new Edge(0, true, 2, 0, 5 * MS));
    levels.reading(reading(20, 0.3, 9));
    levels.reading(reading(100, 2.0, 0.5));
    levels.reading(reading(195, 0.7, 0.1));
    levels.edgeMade(new Edge(1, false, 0, 200 * MS, 205 * MS));
    assertEquals(0.5, levels.meanAmperes(), 1e-12);
  }

  @Test
  void nothingMeasuredIsNotZero() {
    assertTrue(Double.isNaN(levels.meanWatts()));
  }
}
