package railglow.units;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class QuantityTest {
  @ParameterizedTest
  @CsvSource({
    "350 mA, AMPERE, 0.35",
    "1.2V, VOLT, 1.2",
    "6.8 ohm, OHM, 6.8",
    "20 mohm, OHM, 0.02",
    "2 min, SECOND, 120",
    "2 ms, SECOND, 0.002",
    "2.5e-3 V, VOLT, 0.0025",
    "65 degC, CELSIUS, 65",
    "50 mK, KELVIN, 0.05",
    "2 MHz, HERTZ, 2e6",
    "5 %, PERCENT, 5"
  })
  void readsNumbersWithTheirUnit(String text, Unit unit, double expected) {
    assertEquals(expected, Quantity.parse(text, unit), Math.abs(expected) * 1e-12);
  }

  @ParameterizedTest
  @CsvSource({
    "350, AMPERE, has no unit",
    "350 mV, AMPERE, is not in A",
    "x mA, AMPERE, is not a number",
    "1 xA, AMPERE, is not a prefix",
    "1 mdegC, CELSIUS, is not a prefix",
    "NaN V, VOLT, is not a number"
  })
  void saysWhatIsWrong(String text, Unit unit, String part) {
    QuantityException e = assertThrows(QuantityException.class, () -> Quantity.parse(text, unit));
    assertTrue(e.getMessage().contains(part), e.getMessage());
  }

  @Property(seed = "1")
  void whatIsPrintedReadsBackToFourDigits(
      @ForAll @DoubleRange(min = 1e-6, max = 1e6) @Scale(9) double v) {
    assertEquals(v, Quantity.parse(Quantity.format(v, Unit.VOLT), Unit.VOLT), v * 6e-4);
  }

  @ParameterizedTest
  @CsvSource({"0.35, AMPERE, 350 mA", "6.8, OHM, 6.8 ohm", "0, VOLT, 0 V", "90, SECOND, 90 s"})
  void printsWithAFittingPrefix(double value, Unit unit, String expected) {
    assertEquals(expected, Quantity.format(value, unit));
  }
}
