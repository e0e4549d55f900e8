package railglow.sim.fault;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import railglow.units.QuantityException;

class FaultSpecTest {
  @Test
  void aFaultIsReadWithItsValueAndTimes() {
    assertEquals(FaultSpec.always(FaultKind.RUNAWAY).from(12), FaultSpec.parse("runaway@12s"));
    assertEquals(
        FaultSpec.always(FaultKind.LATE_REPLY).withValue(0.8).from(5).until(7),
        FaultSpec.parse("late-reply=800ms@5s..7s"));
    assertEquals(
        FaultSpec.always(FaultKind.DROP_CONNECTION).fromFirstOnPlus(1.5),
        FaultSpec.parse("drop-connection@on+1.5s"));
    assertEquals(FaultSpec.always(FaultKind.ECHO), FaultSpec.parse("ECHO"));
    assertEquals(
        FaultSpec.always(FaultKind.RUNAWAY).withValue(0.25).fromFirstOnPlus(0.5).until(2.5),
        FaultSpec.parse("runaway=250mohm@on+0.5s..2.5s"));
  }

  @Property(seed = "1")
  void whatIsWrittenReadsBack(
      @ForAll FaultKind kind,
      @ForAll boolean afterOn,
      @ForAll @DoubleRange(min = 0, max = 1000) double start,
      @ForAll @DoubleRange(min = 0.1, max = 100) double length) {
    FaultSpec spec = new FaultSpec(kind, kind.defaultValue(), afterOn, start, start + length);
    assertEquals(spec, FaultSpec.parse(spec.written()));
  }

  @Test
  void mistakesAreNamed() {
    assertTrue(message("runway@3s").contains("there is no fault 'runway'"));
    assertTrue(message("runway").contains("runaway"), "the known ones are listed");
    assertTrue(message("echo=3@1s").contains("takes no value"));
    assertTrue(message("runaway@12").contains("no unit"));
    assertTrue(message("runaway@7s..5s").contains("ends before it begins"));
    assertTrue(message("late-reply=3V").contains("not in s"));
  }

  private static String message(String text) {
    return assertThrows(QuantityException.class, () -> FaultSpec.parse(text)).getMessage();
  }

  @Property(seed = "1")
  void anyTextIsReadOrRefusedWithASentence(@ForAll String text) {
    try {
      FaultSpec.parse(text);
    } catch (QuantityException e) {
      assertFalse(e.getMessage().isBlank());
    }
  }

  @Test
  void timesFromTheFirstOnBeginWithIt() {
    FaultSwitches switches =
        new FaultSwitches(
            1000, List.of(FaultSpec.parse("runaway@on+1s..2s"), FaultSpec.parse("echo@3s")));
    assertFalse(switches.isActive(FaultKind.RUNAWAY, 1_500_000_000L));
    switches.outputWentOn(5_000_000_000L);
    assertFalse(switches.isActive(FaultKind.RUNAWAY, 5_900_000_000L));
    assertTrue(switches.isActive(FaultKind.RUNAWAY, 6_500_000_000L));
    assertFalse(switches.isActive(FaultKind.RUNAWAY, 7_000_000_000L));
    switches.outputWentOn(9_000_000_000L);
    assertFalse(switches.isActive(FaultKind.RUNAWAY, 10_500_000_000L), "only the first counts");
    assertTrue(switches.isActive(FaultKind.ECHO, 3_000_001_000L));
  }

  @Test
  void whatHappensOnceHappensOnce() {
    FaultSwitches switches = new FaultSwitches(0, List.of(FaultSpec.parse("overvoltage-trip@1s")));
    assertFalse(switches.takeOnce(FaultKind.OVERVOLTAGE_TRIP, 999_999_999L));
    assertTrue(switches.takeOnce(FaultKind.OVERVOLTAGE_TRIP, 1_000_000_000L));
    assertFalse(switches.takeOnce(FaultKind.OVERVOLTAGE_TRIP, 2_000_000_000L));
    switches.throwAt(FaultKind.OVERVOLTAGE_TRIP, 3_000_000_000L);
    assertTrue(switches.takeOnce(FaultKind.OVERVOLTAGE_TRIP, 3_000_000_000L));
  }
}
