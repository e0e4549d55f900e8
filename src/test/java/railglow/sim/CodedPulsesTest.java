package railglow.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import org.junit.jupiter.api.Test;
import railglow.pulse.PulseOrder;
import railglow.thermal.Look;

class CodedPulsesTest {
  @Test
  void whatSwaysWithThePulsesIsHeatForTheSquareButNotForTheCode() {
    BenchScenario bench = PulseStudy.swaying("healthy", 4, 2);
    Look square = new BenchRun(bench, PulseStudy.sequence(PulseOrder.SQUARE, 12)).toTheEnd();
    Look coded = new BenchRun(bench, PulseStudy.sequence(PulseOrder.CODED, 12)).toTheEnd();
    assertFalse(square.sources().isEmpty() && square.refused().isEmpty());
    assertEquals(0, coded.sources().size(), coded.sources().toString());
  }
}
