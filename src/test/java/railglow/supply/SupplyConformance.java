package railglow.supply;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import railglow.observed.Regulation;
import railglow.observed.SupplyReading;
import railglow.time.InventedClock;

/** What every {@link Supply} must do, whoever implements it. The load is several ohms. */
abstract class SupplyConformance {
  final InventedClock clock = new InventedClock(1_000_000);

  /** Connected, with the output off. */
  abstract Supply supply() throws SupplyException;

  /** From now on nothing answers, though words still arrive. */
  abstract void silence();

  /** Ends {@link #silence}. */
  abstract void speakAgain();

  /** The truth. */
  abstract boolean isTrulyOn();

  private SupplyReading read(Supply supply) throws SupplyException {
    ReadingDraft draft = new ReadingDraft();
    draft.clear();
    long start = clock.nanos();
    for (int part = 0; part < supply.readingExchanges(); part++) {
      supply.readPart(part, draft);
    }
    return draft.finish(start, clock.nanos(), supply.descriptor().tellsRegulation(), false);
  }

  @Test
  void settingsReadBackAsTheyWereSet() throws SupplyException {
    Supply supply = supply();
    supply.setVolts(1.5);
    supply.setAmperes(0.75);
    supply.setOverVoltage(1.8);
    supply.setOverCurrent(0.9);

    assertEquals(1.5, supply.voltsSetting().orElseThrow(), 1e-6);
    assertEquals(0.75, supply.amperesSetting().orElseThrow(), 1e-6);
    assertEquals(1.8, supply.overVoltageSetting().orElseThrow(), 1e-6);
    assertEquals(0.9, supply.overCurrentSetting().orElseThrow(), 1e-6);
    assertEquals(Optional.empty(), supply.nextError());
    assertFalse(isTrulyOn());
  }

  @Test
  void onAndOffAreTrueAndReadBack() throws SupplyException {
    Supply supply = supply();
    supply.setVolts(1);
    supply.setAmperes(0.5);

    assertNotEquals(SwitchState.OFF, supply.switchOn());
    assertTrue(isTrulyOn());
    assertEquals(SwitchState.ON, supply.readSwitch());
    assertNotEquals(SwitchState.ON, supply.switchOff());
    assertFalse(isTrulyOn());
    assertEquals(SwitchState.OFF, supply.readSwitch());
  }

  @Test
  void aReadingTellsVoltsAmperesSwitchAndRegulation() throws SupplyException {
    Supply supply = supply();
    supply.setVolts(1);
    supply.setAmperes(0.5);
    supply.switchOn();
    clock.advance(300_000_000);

    SupplyReading reading = read(supply);

    assertEquals(1, reading.volts(), 0.01);
    assertTrue(reading.amperes() > 0.1 && reading.amperes() < 0.2, reading.toString());
    assertTrue(reading.outputOn());
    assertEquals(Regulation.CONSTANT_VOLTAGE, reading.regulation());
    assertEquals(Set.of(), reading.trips());
    assertTrue(reading.endNanos() > reading.startNanos(), "an exchange takes time");
  }

  @Test
  void theCurrentLimitHoldsAndIsTold() throws SupplyException {
    Supply supply = supply();
    supply.setVolts(1);
    supply.setAmperes(0.05);
    supply.switchOn();
    clock.advance(300_000_000);

    SupplyReading reading = read(supply);

    assertEquals(0.05, reading.amperes(), 0.005);
    assertEquals(Regulation.CONSTANT_CURRENT, reading.regulation());
  }

  @Test
  void afterASilenceTheLinkIsOutOfStepAndOffArrivesAllTheSame() throws SupplyException {
    Supply supply = supply();
    supply.setVolts(1);
    supply.switchOn();
    silence();

    SupplyException e = assertThrows(SupplyException.class, () -> read(supply));

    assertEquals(SupplyException.Kind.NO_ANSWER, e.kind());
    assertTrue(supply.isOutOfStep());
    assertEquals(SwitchState.NOT_TOLD, supply.switchOff());
    assertFalse(isTrulyOn());
    assertTrue(supply.isOutOfStep(), "off alone does not bring it back in step");
    speakAgain();
    supply.resynchronise();
    assertFalse(supply.isOutOfStep());
    assertEquals(SwitchState.OFF, supply.readSwitch());
  }
}
