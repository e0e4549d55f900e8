package railglow.thermal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.function.DoubleFunction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class WholePulseTest {
  private static final DetectionSettings SETTINGS = DetectionSettings.usual(2, 0.01, 0.05, 4, 30);

  /** 25 Hz, two frames left out after each edge and one before: what is told most wrongly. */
  private static ResponseCurve curve() {
    double[][] frames = new double[4][];
    int[][] ofQuarter = {{0, 11}, {14, 24}, {25, 36}, {39, 49}};
    for (int quarter = 0; quarter < 4; quarter++) {
      int from = ofQuarter[quarter][0];
      frames[quarter] = new double[ofQuarter[quarter][1] - from + 1];
      for (int k = 0; k < frames[quarter].length; k++) {
        frames[quarter][k] = 0.04 * (from + k) + 0.012;
      }
    }
    FramesUsed used = new FramesUsed(SETTINGS);
    used.add(30, List.of(new CycleTimes(2, false, false, new double[] {0.502, 1.502}, frames)));
    return used.ofSwings();
  }

  private static Amplitudes amplitudes(FirstOrderResponse g) {
    return new Amplitudes(0.2 * g.inPhase(), 0.2 * g.quadrature(), 1e-8, 2e-8, 5e-9);
  }

  private static void isRestored(
      DoubleFunction<FirstOrderResponse> seen, FirstOrderResponse whole, double within) {
    Amplitudes shown = amplitudes(seen.apply(0));
    Amplitudes truth = amplitudes(whole);
    WholePulse pulse = WholePulse.of(shown, curve());
    Amplitudes told = pulse.of(shown);
    assertEquals(truth.size(), told.size(), within * truth.size());
    double open = pulse.openShare() + 2 * Math.sqrt(pulse.relativeVariance()) + 1e-3;
    assertTrue(
        Math.abs(told.size() - truth.size()) <= open * truth.size(), () -> told + " of " + truth);
    assertEquals(
        shown.sizeVariance() / shown.size() / shown.size(),
        told.sizeVariance() / told.size() / told.size(),
        1e-3 * shown.sizeVariance() / shown.size() / shown.size());
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, 0.01, 0.05, 0.2, 0.6, 2, 6})
  void theSwingOfOneBodyIsThatOfWholeQuarters(double tau) {
    ResponseCurve curve = curve();
    isRestored(any -> curve.seen(tau), curve.whole(tau), 0.015);
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.006, 0.02, 0.1, 0.5})
  void soIsThatOfHeatThatSpreads(double fastest) {
    ResponseCurve curve = curve();
    isRestored(
        any -> SheetResponse.of(fastest, 6, curve::seen),
        SheetResponse.of(fastest, 6, curve::whole),
        0.015);
  }

  @ParameterizedTest
  @CsvSource({"0.01, 0.01", "0.05, 0.01", "0.2, 0.015", "0.6, 0.025"})
  void soIsThatOfWhatIsSeenThroughACoat(double tau, double within) {
    ResponseCurve curve = curve();
    isRestored(
        any -> CoveredResponse.of(tau, curve::seen), CoveredResponse.of(tau, curve::whole), within);
  }

  @Test
  void whatWholeQuartersShowStaysAsItIs() {
    Amplitudes shown = amplitudes(SETTINGS.response(0.3));
    WholePulse pulse = WholePulse.of(shown, ResponseCurve.ofWholeQuarters(SETTINGS));
    assertEquals(shown, pulse.of(shown));
    assertEquals(0, pulse.openShare());
  }
}
