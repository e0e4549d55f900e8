package railglow.run.handsfree;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import railglow.config.ConfigException;
import railglow.config.SequenceFile;
import railglow.config.SupplyDescriptorFile;
import railglow.safety.Envelope;
import railglow.safety.Refusal;
import railglow.supply.ChannelAbility;

class SensingLevelTest {
  @TempDir Path folder;

  @Test
  void theUsualLevelIsAtMostATenthOfTheLimits() {
    Envelope wide = Envelope.OPEN.withMaxVolts(2.6, "rail").withMaxAmperes(3, "bench");
    assertEquals(new SensingLevel(0.05, 0.02), SensingLevel.within(wide));
    Envelope narrow = Envelope.OPEN.withMaxVolts(0.3, "rail").withMaxAmperes(0.1, "bench");
    assertEquals(0.03, SensingLevel.within(narrow).volts(), 1e-12);
    assertEquals(0.01, SensingLevel.within(narrow).amperes(), 1e-12);
  }

  @Test
  void whatIsOutsideAnyLimitIsRefusedWithTheLimitsOrigin() throws Exception {
    Envelope envelope = Envelope.OPEN.withMaxVolts(0.04, "board file, rail 1V0");
    ChannelAbility channel = channel();
    assertTrue(new SensingLevel(0.03, 0.02).refusals(envelope, channel, "s").isEmpty());
    assertEquals(1, new SensingLevel(0.05, 0.02).refusals(envelope, channel, "s").size());
    List<Refusal> far = new SensingLevel(0.2, 0.2).refusals(envelope, channel, "s");
    assertEquals(3, far.size(), far.toString());
    assertTrue(
        far.stream().anyMatch(r -> r.sentence().contains("board file, rail 1V0")), far.toString());
    assertEquals(1, new SensingLevel(0.03, 5e-5).refusals(envelope, channel, "s").size());
    assertTrue(!new SensingLevel(Double.NaN, 0.02).refusals(envelope, channel, "s").isEmpty());
  }

  @Test
  void theShippedSequenceGivesItsLevelAndOneWithoutASectionGivesNone() throws Exception {
    assertEquals(
        Optional.of(new SensingLevel(0.05, 0.02)),
        SequenceFile.sensing(Path.of("sequences/touch.yaml")));
    assertEquals(Optional.empty(), SequenceFile.sensing(Path.of("sequences/gentle.yaml")));
  }

  @Test
  void aSensingLevelThatIsNotHarmlessIsRefusedInTheFileByEveryReader() throws Exception {
    String text = Files.readString(Path.of("sequences/touch.yaml")).replace("50 mV", "500 mV");
    Path file = Files.writeString(folder.resolve("touch.yaml"), text);
    assertThrows(ConfigException.class, () -> SequenceFile.sensing(file));
    assertThrows(ConfigException.class, () -> SequenceFile.read(file));
  }

  private static ChannelAbility channel() throws ConfigException {
    return SupplyDescriptorFile.read(Path.of("instruments/supply-simulated.yaml")).channel(1);
  }
}
