package railglow.config;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import railglow.safety.Protection;
import railglow.supply.StatusMeaning;
import railglow.supply.SupplyDescriptor;

class SupplyDescriptorFileTest {
  private static final Path SIMULATED = Path.of("instruments/supply-simulated.yaml");

  @ParameterizedTest
  @ValueSource(
      strings = {
        "supply-simulated.yaml",
        "supply-scpi-regulation-in-operation.yaml",
        "supply-scpi-regulation-in-questionable.yaml"
      })
  void everyShippedDescriptorIsRead(String name) throws ConfigException {
    SupplyDescriptor supply = SupplyDescriptorFile.read(Path.of("instruments", name));

    assertTrue(supply.tellsRegulation());
    assertTrue(supply.overVoltage().isPresent());
    assertTrue(supply.overCurrent().isPresent());
  }

  @Test
  void theSimulatedSupplyLacksNoProtection() throws ConfigException {
    assertEquals(Set.of(), SupplyDescriptorFile.read(SIMULATED).missing());
  }

  @Test
  void theFamiliesDifferInTheMeaningOfTheSameBit() throws ConfigException {
    SupplyDescriptor operation =
        SupplyDescriptorFile.read(Path.of("instruments/supply-scpi-regulation-in-operation.yaml"));
    SupplyDescriptor questionable =
        SupplyDescriptorFile.read(
            Path.of("instruments/supply-scpi-regulation-in-questionable.yaml"));

    assertEquals(StatusMeaning.OVERVOLTAGE_TRIP, operation.status().get(1).bits().get(0));
    assertEquals(StatusMeaning.CONSTANT_CURRENT, questionable.status().get(0).bits().get(0));
    assertEquals(StatusMeaning.UNREGULATED, operation.status().get(1).bits().get(10));
    assertEquals(StatusMeaning.OVERCURRENT_TRIP, questionable.status().get(0).bits().get(10));
  }

  @Test
  void aSupplyWithoutProtectionsSaysWhatIsMissing() throws ConfigException, IOException {
    String bare =
        """
        name: bare supply
        identity: "^BARE"
        wire: {reply-within: 500 ms, reading-interval: 100 ms}
        channels:
          - voltage: {lowest: 0 V, highest: 30 V, meter-error: 50 mV}
            current: {lowest: 10 mA, highest: 5 A, meter-error: 20 mA}
        commands:
          identify: "*IDN?"
          output-on: "OUT1"
          output-off: "OUT0"
          set-voltage: "VSET1:{volts}"
          set-current: "ISET1:{amperes}"
          measure-voltage: "VOUT1?"
          measure-current: "IOUT1?"
        """;

    SupplyDescriptor supply = SupplyDescriptorFile.parse(Path.of("bare.yaml"), bare);

    assertEquals(
        Set.of(
            Protection.OVER_VOLTAGE_PROTECTION,
            Protection.OVER_CURRENT_PROTECTION,
            Protection.OUTPUT_READ_BACK,
            Protection.SETTINGS_READ_BACK,
            Protection.REGULATION_STATUS,
            Protection.TRIP_STATUS,
            Protection.ERROR_QUEUE,
            Protection.SUPPLY_WATCHDOG),
        supply.missing());
    assertEquals(0, supply.channel(1).voltsStep());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "set-voltage: \"VOLT {volts}\" | set-voltage: \"VOLT\" | must hold {volts}",
        "output-on: \"OUTP ON\" | output-on: \"OUTP {state}\" | holds {state}",
        "identity: \"^Railglow,SimulatedSupply,\" | identity: \"^(Rail\" | not a regular expression",
        "highest: 30 V, | highest: 30 A, | not in V",
        "lowest: 0 V, highest: 30 V | lowest: 31 V, highest: 30 V | above 'highest' 30 V",
        "bit: 8, means: constant-voltage | bit: 8, means: perfect | allowed is one of",
        "bit: 8, means | bit: 16, means | allowed is 0 to 15",
        "any-command-feeds: yes | any-command-feeds: no | must not both be",
        "reply-within: 500 ms | reply-within: 500 | no unit",
        "compound: yes | compuond: yes | not a key known here",
        "output-query: \"OUTP?\" | on-replies: [\"0\"] | share a word"
      })
  void aMistakeIsNamedWithItsLine(String right, String wrong, String complaint) throws IOException {
    String text = Files.readString(SIMULATED);
    assertTrue(text.contains(right), right);
    String broken = text.replace(right, wrong);
    int line = (int) text.substring(0, text.indexOf(right)).lines().count();

    ConfigException e =
        assertThrows(ConfigException.class, () -> SupplyDescriptorFile.parse(SIMULATED, broken));

    List<ConfigProblem> named =
        e.problems().stream().filter(p -> p.message().contains(complaint)).toList();
    assertEquals(1, named.size(), e.getMessage());
    assertTrue(Math.abs(named.get(0).line() - line) <= 4, e.getMessage());
  }

  @Test
  void twoChannelsWithoutAWordForTheChannelAreRefused() throws IOException {
    String text = Files.readString(SIMULATED);
    String channel =
        "  - voltage: {lowest: 0 V, highest: 30 V, step: 1 mV, meter-step: 1 mV,"
            + " meter-error: 5 mV, meter-error-share: 0.1 %}\n"
            + "    current: {lowest: 1 mA, highest: 5 A, step: 0.1 mA, meter-step: 0.1 mA,"
            + " meter-error: 2 mA, meter-error-share: 0.2 %}\n";
    assertTrue(text.contains(channel));
    String two = text.replace(channel, channel + channel);

    ConfigException e =
        assertThrows(ConfigException.class, () -> SupplyDescriptorFile.parse(SIMULATED, two));

    assertTrue(e.getMessage().contains("does not say which one"), e.getMessage());
  }
}
