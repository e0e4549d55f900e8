package railglow.scpi;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class NumberFormsTest {
  private static double sent(String number, String unit) throws ScpiException {
    ProgramMessage message = ProgramMessage.parse("D " + number);
    if (message.error().isPresent()) {
      throw message.error().get();
    }
    return message.commands().get(0).argument(0).number(unit);
  }

  @ParameterizedTest
  // spellings of 28 from the 86120B programming manual, p. 108, and the white space of IEEE 488.2
  @ValueSource(strings = {"28", "0.28E2", "280E-1", "28000m", "0.028K", "28E-3K", "+28.", "28 e0"})
  void everyFormOfTwentyEightIsExactlyTwentyEight(String number) throws ScpiException {
    assertEquals(28.0, sent(number, "V"));
  }

  @ParameterizedTest
  // multipliers: 53131A/53150A counter programming guide, table 3-2
  @CsvSource({
    "1 EXV,V,1E18", "1PEV,V,1E15", "1TV,V,1E12", "1GV,V,1E9", "1MAV,V,1E6", "1KV,V,1E3",
    "1MV,V,1E-3", "1UV,V,1E-6", "1NV,V,1E-9", "1PV,V,1E-12", "1FV,V,1E-15", "1AV,V,1E-18",
    "1 mhz,HZ,1E6", "1 Mohm,OHM,1E6", "5 MA,A,5E-3", "5 MAA,A,5E6", "5 mA,A,5E-3", "5 A,A,5",
    "5 MA,'',5E6", "3 KHZ,HZ,3E3", "2 S,S,2", "2 MS,S,2E-3"
  })
  void multipliersAndTheirExceptions(String number, String unit, double value)
      throws ScpiException {
    assertEquals(value, sent(number, unit));
  }

  @ParameterizedTest
  @CsvSource({"5 A,V", "5 MA,V", "5 F,V", "5 Q,V", "5 VV,V", "5 V,A", "5 OHM,V", "5 A/S,A"})
  void aSuffixThatMayMeanAnotherUnitIsRefused(String number, String unit) {
    ScpiException e = assertThrows(ScpiException.class, () -> sent(number, unit));
    assertEquals(ScpiError.INVALID_SUFFIX, e.error());
  }

  @ParameterizedTest
  // N1911A programming manual, p. 75: case does not matter
  @CsvSource({"#HA2F,2607", "#ha2f,2607", "#Q62,50", "#q62,50", "#B01011,11", "#b01011,11"})
  void numbersToOtherBases(String text, double value) throws ScpiException {
    assertEquals(value, sent(text, ""));
    assertEquals(value, ScpiReply.number(text));
  }

  @ParameterizedTest
  // SCPI-1999 volume 1, 7.2.1; spellings as real instruments send them
  @ValueSource(strings = {"9.91E37", "9.91000E+37", "+9.91E+37", "9.91e37", "NAN"})
  void theMarkForNotANumberIsNotAMeasurement(String text) throws ScpiException {
    assertEquals(Double.NaN, ScpiReply.number(text));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"+9.90000000E+37", "9.9E+37", "9.9E37", "9.95E37", "1E38", "1E999", "INF"})
  void anythingFromTheMarkForInfinityUpIsNotAMeasurement(String text) throws ScpiException {
    assertEquals(Double.POSITIVE_INFINITY, ScpiReply.number(text));
    if (!text.equals("INF") && !text.startsWith("+")) {
      assertEquals(Double.NEGATIVE_INFINITY, ScpiReply.number("-" + text));
    }
  }

  @Test
  void theLargestMeasurementIsJustBelowTheMark() throws ScpiException {
    assertEquals(9.89e37, ScpiReply.number("9.89E37"));
    assertEquals(-9.89e37, ScpiReply.number("-9.89E+37"));
  }

  @Test
  void valuesThatAreNoMeasurementAreSentAsMarks() {
    assertEquals("9.91E37", ReplyText.nr3(Double.NaN, 4));
    assertEquals("9.9E37", ReplyText.nr2(Double.POSITIVE_INFINITY, 3));
    assertEquals("-9.9E37", ReplyText.nr3(-1e38, 4));
    assertEquals("1.200", ReplyText.nr2(1.2, 3));
    assertEquals("1.2000E+00", ReplyText.nr3(1.2, 4));
  }

  @ParameterizedTest
  @CsvSource({"1.2,1.2", "0.005,0.005", "0,0", "-0.0,0", "12,12", "1E-15,1E-15", "350E-3,0.35"})
  void numbersAreSentPlainlyAndWithoutASuffix(double value, String text) {
    assertEquals(text, ProgramText.number(value));
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY})
  void aValueThatIsNotFiniteIsNeverSent(double value) {
    assertThrows(IllegalArgumentException.class, () -> ProgramText.number(value));
  }
}
