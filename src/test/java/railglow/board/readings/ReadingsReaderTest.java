package railglow.board.readings;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import railglow.board.readings.RailReading.Polarity;

class ReadingsReaderTest {
  private static List<RailReading> read(String text) {
    return ReadingsReader.read("r.csv", text.getBytes(StandardCharsets.UTF_8));
  }

  @Test
  void aTableOfReadingsIsRead() {
    List<RailReading> readings =
        read(
            """
            rail;reading;leads;level;polarity
            # taken at the bench
            3V3;7.0 ohm;0.2 ohm;0.2 V;reversed
            12V;2.2 kohm;;;
            AUX;OL
            """);
    assertEquals(3, readings.size());
    assertEquals(6.8, readings.get(0).railOhms(), 1e-9);
    assertEquals(0.2, readings.get(0).testVolts(), 1e-9);
    assertEquals(Polarity.NEGATIVE, readings.get(0).polarity());
    assertEquals(2200, readings.get(1).railOhms(), 1e-9);
    assertEquals(Double.POSITIVE_INFINITY, readings.get(2).railOhms());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "rail,reading\\n3V3,7.0          | 2 | 5  | no unit",
        "rail,reading\\n3V3,-1 ohm       | 2 | 5  | out of range",
        "rail,reading\\n,1 ohm           | 2 | 1  | names no rail",
        "rail,reading\\n3V3              | 2 | 1  | ends before its column 'reading'",
        "rail,ohms\\n3V3,1 ohm           | 1 | 6  | no column of readings",
        "rail,polarity\\n3V3,+           | 1 | 1  | must be there",
        "rail,reading,polarity\\nA,1 ohm,up | 2 | 9 | is no polarity",
        "rail,reading\\nA,1 ohm,2        | 2 | 9  | more cells",
      })
  void aBrokenTableIsNamedWithLineAndColumn(String text, int line, int column, String message) {
    ReadingsException problem =
        assertThrows(ReadingsException.class, () -> read(text.replace("\\n", "\n")));
    assertTrue(problem.getMessage().contains(message), problem.getMessage());
    assertEquals(line, problem.line());
    assertEquals(column, problem.column());
  }

  @Test
  void aReadingIsReadFromACommandLine() {
    assertEquals(6.8, ReadingsReader.parse("3V3=7 ohm", 0.2).railOhms(), 1e-9);
    assertThrows(ReadingsException.class, () -> ReadingsReader.parse("3V3", 0));
    assertThrows(ReadingsException.class, () -> ReadingsReader.parse("3V3=7", 0));
  }

  @Property(tries = 300, seed = "1")
  void anyTextGivesReadingsOrAPlaceToLookAt(@ForAll String tail) {
    for (String text : List.of(tail, "rail,reading,leads\n" + tail)) {
      try {
        read(text).forEach(reading -> assertTrue(reading.railOhms() >= 0));
      } catch (ReadingsException e) {
        assertTrue(e.line() >= 1 && e.column() >= 1);
      }
    }
  }
}
