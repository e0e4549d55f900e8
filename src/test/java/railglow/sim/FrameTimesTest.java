package railglow.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import railglow.thermal.HeatSource;

/** What is told of a place does not depend on how frames stand to the edges of the pulses. */
class FrameTimesTest {
  private static final double NOISE_KELVIN = 0.05;
  private static final double SWING_KELVIN = 0.2;
  private static final int CYCLES = 8;

  /** At 25 Hz and 2 s one or two frames are left out at each edge, by the phase. */
  @ParameterizedTest
  @CsvSource({
    "0, 25, 0.002",
    "0.05, 25, 0.002",
    "0.6, 25, 0.002",
    "2, 25, 0.002",
    "2, 25, 0.020",
    "0.6, 9, 0.002",
    "2, 9, 0.002"
  })
  void theSwingToldIsTheSameHoweverFramesStandToEdges(double tau, double fps, double late) {
    double lag = 0.01;
    double share = WarmedBody.swing(tau, lag, PhasedRun.PERIOD_SECONDS);
    double tolerance = fps > 20 ? 0.035 : 0.06;
    int holds = 0;
    for (int phase = 0; phase < 5; phase++) {
      PhasedRun run =
          new PhasedRun(
              WarmedScene.WIDTH, WarmedScene.HEIGHT, fps, lag, 0.1 + 0.2 * phase, late, CYCLES);
      WarmedScene scene =
          new WarmedScene(
              WarmedBody.fromRest(tau, lag, PhasedRun.PERIOD_SECONDS, late),
              run.startSeconds(),
              SWING_KELVIN / share,
              NOISE_KELVIN,
              100 + phase);
      HeatSource source = run.look(scene).sources().get(0);
      assertEquals(SWING_KELVIN, source.swingKelvin(), tolerance * SWING_KELVIN, run::toString);
      holds += source.swingInterval95().contains(SWING_KELVIN) ? 1 : 0;
    }
    assertTrue(holds >= 4, holds + " of 5 intervals hold the truth");
  }
}
