package railglow.live;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import railglow.observed.OutputState;
import railglow.run.RunProgress;
import railglow.thermal.HeatSource;
import railglow.thermal.InventedSource;
import railglow.units.Interval;

class StatusLineTest {
  @Test
  void saysCycleTimeOutputHeatAndTheBestSource() {
    HeatSource source =
        InventedSource.at(164.2, 113.8)
            .variance(0.04)
            .swings(0.05, new Interval(0.05, 0.07))
            .settles(0.0621, new Interval(0.05, 0.07))
            .channels(0.05, 0.01)
            .timeConstant(0.2)
            .p(0.0031)
            .consistency(0.9)
            .source();
    String line =
        StatusLine.of(
            new RunProgress(
                0, 12, 150, 24.4, 303, OutputState.ON, 1.97, 0.2893, 24.31, 0.4, source, "K"));
    assertEquals(
        "cycle 12/150  24 s of at most 303 s  ON 1.970 V 0.2893 A  hottest 24.3 degC"
            + "  best 50 mK at column 164 row 114, p 0.003",
        line);
  }

  @Test
  void saysNothingOfWhatIsNotKnown() {
    String line =
        StatusLine.of(
            new RunProgress(
                0,
                0,
                6,
                0,
                60,
                OutputState.UNKNOWN,
                Double.NaN,
                Double.NaN,
                Double.NaN,
                Double.NaN,
                null,
                "counts"));
    assertEquals("cycle 0/6  0 s of at most 60 s  output not proven yet", line);
  }
}
