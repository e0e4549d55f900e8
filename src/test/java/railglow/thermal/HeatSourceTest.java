package railglow.thermal;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import railglow.units.Interval;

/** Whether anything is known of where a place would settle. */
class HeatSourceTest {
  @ParameterizedTest(name = "{0} to {1} K: {2}")
  @CsvSource({
    "0.19, 0.21, true",
    "0.48, 0.86, true",
    "0.2, 1.9, true",
    "0.029, 2.029, false",
    "-0.9, 2, false"
  })
  void aSettledRiseIsKnownWhereItsIntervalSpansLessThanAFactorOfTen(
      double low, double high, boolean known) {
    HeatSource source =
        new HeatSource(
            10,
            10,
            0.01,
            0.01,
            0,
            0.2,
            new Interval(0.19, 0.21),
            (low + high) / 2,
            new Interval(low, high),
            0.2,
            0,
            0,
            2,
            0.001,
            1,
            List.of());
    assertEquals(known, source.settledRiseIsKnown());
  }
}
