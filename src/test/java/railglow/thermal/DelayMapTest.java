package railglow.thermal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class DelayMapTest {
  @Test
  void theSourceIsEarlierThanWhatItHeatsThoughThatIsAsWarm() {
    WhiteCycles cycles =
        new WhiteCycles(96, 72, 0.014, 4)
            .with(new WhiteCycles.Source(30, 30, 2, 0.3, 0.1), 0, 2)
            .with(new WhiteCycles.Source(60, 30, 3, 1.2, 1.5), 0, 2);
    Detector detector = new Detector(DetectionSettings.usual(2, 0, 0.05, 4, 10), 96, 72);
    for (int k = 0; k < 10; k++) {
      detector.addCycle(cycles.next());
    }
    Look look = detector.look();
    Plane delay = DelayMap.of(look.inPhase(), look.quadrature(), 1.5, 4);
    assertEquals(FirstOrderResponse.of(0.1, 2).angle(), delay.at(30, 30), 0.1);
    assertEquals(FirstOrderResponse.of(1.5, 2).angle(), delay.at(60, 30), 0.1);
    assertTrue(Float.isNaN(delay.at(10, 60)));
  }
}
