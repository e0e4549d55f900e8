package railglow.run.ladder;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import railglow.board.ladder.LadderStep;
import railglow.config.SupplyDescriptorFile;
import railglow.observed.Regulation;
import railglow.observed.SupplyReading;
import railglow.supply.ChannelAbility;
import railglow.supply.PlainSupply;

class ReadBackTest {
  private static ChannelAbility channel(String descriptor) throws Exception {
    return SupplyDescriptorFile.read(Path.of("instruments", descriptor)).channel(1);
  }

  private static LadderStep stepOfSteadyReadings(ReadBack readBack) {
    StepReadings readings = new StepReadings(0, readBack);
    for (int i = 0; i < 6; i++) {
      readings.add(
          new SupplyReading(i, i + 1, 0.5, 0.05, true, Regulation.CONSTANT_VOLTAGE, Set.of()));
    }
    return readings.step();
  }

  @Test
  void aStepIsKnownToTheDigitTheDescriptorStates() throws Exception {
    ReadBack readBack = ReadBack.of(channel("supply-simulated.yaml"));
    LadderStep step = stepOfSteadyReadings(readBack);
    assertEquals(1e-3, step.voltsSigma(), 1e-12);
    assertEquals(0.1e-3, step.amperesSigma(), 1e-12);
    assertEquals(0.1e-3, step.driftSigma(), 1e-12);
    assertEquals(
        "each step is taken to 1 mV and 100 uA (one digit of the read-back by the supply's"
            + " descriptor), and its readings' scatter.",
        readBack.sentence());
  }

  @Test
  void withoutItTheStepOfTheSettingIsTakenAndSaidToBeThat() throws Exception {
    ReadBack readBack = ReadBack.of(channel("supply-scpi-regulation-in-operation.yaml"));
    assertEquals(2e-3, stepOfSteadyReadings(readBack).voltsSigma(), 1e-12);
    assertEquals(1e-3, stepOfSteadyReadings(readBack).amperesSigma(), 1e-12);
    assertTrue(readBack.sentence().contains("one step of the setting"), readBack.sentence());
  }

  @Test
  void whereNothingIsStatedTheUsualIsSupposedAndSaidToBe() {
    ReadBack readBack = ReadBack.of(PlainSupply.descriptor().channel(1));
    assertEquals(ReadBack.USUAL, readBack);
    assertTrue(readBack.sentence().contains("supposed: common practice, no source"));
  }

  @Test
  void theJournalsLineGivesEveryBitBack() throws Exception {
    ReadBack odd = new ReadBack(1.0 / 3, 7e-5, "one digit (of many)");
    assertEquals(Optional.of(odd), ReadBack.ofNote(odd.note()));
    assertEquals(Optional.empty(), ReadBack.ofNote("level 3 done: 7 readings"));
    assertEquals(
        Optional.empty(), ReadBack.ofNote("each step's reading is known to x V and 1 A (y)"));
  }
}
