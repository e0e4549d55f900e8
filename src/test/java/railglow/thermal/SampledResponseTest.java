package railglow.thermal;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SampledResponseTest {
  private static final double PERIOD = 2;

  /** Of frames spread so evenly and finely that they show whole quarters. */
  private static CycleTimes fine(boolean inverted, boolean onAtStart, double... switches) {
    double[][] frames = new double[4][2000];
    for (int quarter = 0; quarter < 4; quarter++) {
      for (int k = 0; k < 2000; k++) {
        frames[quarter][k] = (quarter + (k + 0.5) / 2000) * PERIOD / 4;
      }
    }
    return new CycleTimes(PERIOD, inverted, onAtStart, switches, frames);
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, 0.003, 0.05, 0.3, 1, 6})
  void framesThatShowWholeQuartersOfPulsesInTimeShowWhatWholeQuartersDo(double tau) {
    List<CycleTimes> cycle = List.of(fine(false, false, 0.5, 1.5));
    FirstOrderResponse seen = SampledResponse.of(tau, 0.02, cycle);
    FirstOrderResponse whole = FirstOrderResponse.of(tau, 0.02, PERIOD);
    assertEquals(whole.inPhase(), seen.inPhase(), 1e-5);
    assertEquals(whole.quadrature(), seen.quadrature(), 1e-5);
  }

  /** OFF ON ON OFF, then ON OFF OFF ON, with an edge where they meet. */
  @ParameterizedTest
  @ValueSource(doubles = {0, 0.003, 0.05, 0.3, 1, 6})
  void soDoThoseOfACodedPair(double tau) {
    FirstOrderResponse whole = FirstOrderResponse.coded(tau, 0.02, PERIOD);
    CycleTimes plain = fine(false, false, 0.5, 1.5);
    for (List<CycleTimes> pair :
        List.of(
            List.of(plain, fine(true, false, 0, 0.5, 1.5)),
            List.of(fine(true, true, 0.5, 1.5), fine(false, true, 0, 0.5, 1.5)))) {
      FirstOrderResponse seen = SampledResponse.of(tau, 0.02, pair);
      assertEquals(whole.inPhase(), seen.inPhase(), 1e-5);
      assertEquals(whole.quadrature(), seen.quadrature(), 1e-5);
    }
  }

  /** A body that follows at once is seen in whole in every frame that is clear of the edges. */
  @ParameterizedTest
  @ValueSource(doubles = {0.51, 0.53})
  void edgesMadeLateChangeNothingOfWhatFollowsAtOnce(double on) {
    double[][] frames = {{0.1, 0.4}, {0.6, 0.9}, {1.1, 1.4}, {1.6, 1.9}};
    CycleTimes cycle = new CycleTimes(PERIOD, false, false, new double[] {on, 1 + on}, frames);
    assertEquals(new FirstOrderResponse(1, 0), SampledResponse.of(0, List.of(cycle)));
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.002, 0.04, 0.3, 2})
  void theCurveOfTheFramesUsedIsWhatTheyShow(double tau) {
    DetectionSettings settings = DetectionSettings.usual(PERIOD, 0.01, 0.05, 4, 30);
    double[][] frames = {{0.02, 0.2, 0.44}, {0.56, 0.8, 0.98}, {1.02, 1.4}, {1.56, 1.7, 1.98}};
    List<CycleTimes> unit =
        List.of(new CycleTimes(PERIOD, false, false, new double[] {0.505, 1.505}, frames));
    FramesUsed used = new FramesUsed(settings);
    used.add(9, unit);
    used.add(11, List.of());
    FirstOrderResponse seen = used.ofSwings().seen(tau);
    FirstOrderResponse whole = settings.response(tau);
    FirstOrderResponse exact = SampledResponse.of(tau, 0.01, unit);
    assertEquals((exact.inPhase() + whole.inPhase()) / 2, seen.inPhase(), 1e-3);
    assertEquals((exact.quadrature() + whole.quadrature()) / 2, seen.quadrature(), 1e-3);
  }
}
