package railglow.board.readings;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.charset.StandardCharsets;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;
import railglow.board.readings.RailReading.Polarity;

class ReadingsTableTest {
  @Property(tries = 200, seed = "1")
  void whatIsWrittenIsReadBack(@ForAll("readings") List<RailReading> readings) {
    assertEquals(
        readings,
        ReadingsReader.read("r.csv", ReadingsTable.csv(readings).getBytes(StandardCharsets.UTF_8)));
  }

  @Test
  void aRailReadAgainLosesItsOlderReadings() {
    List<RailReading> older =
        List.of(
            RailReading.ofMeter("3V3", 7, 0),
            RailReading.ofMeter("3V3", 8, 0),
            RailReading.ofMeter("5V0", 400, 0));
    List<RailReading> newer = List.of(RailReading.ofMeter("3v3", 50, 0));
    assertEquals(
        List.of("5V0", "3v3"),
        ReadingsTable.corrected(older, newer).stream().map(RailReading::rail).toList());
  }

  @Provide
  Arbitrary<List<RailReading>> readings() {
    return Combinators.combine(
            Arbitraries.strings().withChars("AV35_\",+").ofMinLength(1).ofMaxLength(8),
            Arbitraries.doubles().between(0, 1e8).map(v -> v > 9e7 ? Double.POSITIVE_INFINITY : v),
            Arbitraries.doubles().between(0, 50),
            Arbitraries.doubles().between(0, 10).map(v -> v < 1 ? Double.NaN : v),
            Arbitraries.of(Polarity.values()))
        .as(RailReading::ofMeter)
        .list()
        .ofMaxSize(6);
  }
}
