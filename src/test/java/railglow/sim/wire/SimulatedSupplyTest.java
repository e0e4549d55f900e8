package railglow.sim.wire;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import railglow.sim.fault.FaultSpec;

/** The supply's SCPI against IEEE 488.2 and SCPI-1999. */
class SimulatedSupplyTest {
  private final SupplyBesideLoad bench = new SupplyBesideLoad(10);

  @Test
  void theIdentityHasFourFields() {
    assertEquals("Railglow,SimulatedSupply,SIM0001,1.0", bench.send("*IDN?"));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "VOLT 1.5",
        "voltage 1.5",
        "SOUR:VOLT:LEV:IMM:AMPL 1.5",
        "source:voltage:level 1500 mV",
        ":VOLT 0.15E1",
        "VOLT 1500m"
      })
  void allSpellingsOfAHeaderAndANumberMeanTheSame(String command) {
    assertNull(bench.send(command));
    assertEquals(1.5, bench.number("VOLT?"));
    assertEquals("0,\"No error\"", bench.send("SYST:ERR?"));
  }

  @ParameterizedTest
  @CsvSource({
    "VOLTA 1, -113",
    "VOL 1, -113",
    "VOLT, -109",
    "'VOLT 1,2', -108",
    "VOLT 31, -222",
    "VOLT -1, -222",
    "VOLT 1 A, -131",
    "OUTP MAYBE, -224",
    "INST:NSEL 2, -222",
    "VOLT 1;;, -102",
    "VOLT 1E33000, -123",
    "*ESE 256, -222"
  })
  void mistakesGoToTheErrorQueueAndChangeNothing(String line, int code) {
    bench.send("VOLT 1;CURR 1");
    bench.send("*CLS");
    assertNull(bench.send(line));
    assertTrue(bench.send("SYST:ERR?").startsWith(code + ",\""), line);
    assertEquals("0,\"No error\"", bench.send("SYST:ERR?"));
    assertEquals(1, bench.number("VOLT?"));
    assertEquals("0", bench.send("OUTP?"));
  }

  @Test
  void anUnknownCommandAfterOpcGives33() {
    bench.send("*CLS");
    bench.send("*OPC");
    bench.send("NONSENSE");
    // ESR = 32 (command error) + 1 (operation complete), the check of a meter maker's manual.
    assertEquals("33", bench.send("*ESR?"));
    assertEquals("0", bench.send("*ESR?"), "reading clears");
  }

  @Test
  void aFullErrorQueueEndsWithOverflowAndKeepsTheOldest() {
    bench.send("NONSENSE");
    for (int i = 0; i < 40; i++) {
      bench.send("VOLT 99");
    }
    assertEquals("20", bench.send("SYST:ERR:COUN?"));
    assertTrue(bench.send("SYST:ERR?").startsWith("-113,"));
    String last = "";
    for (int i = 0; i < 19; i++) {
      last = bench.send("SYST:ERR?");
    }
    assertEquals("-350,\"Queue overflow\"", last);
    assertEquals("0,\"No error\"", bench.send("SYST:ERR?"));
  }

  @Test
  void queriesOfOneMessageAreAnsweredInOneLine() {
    bench.send("VOLT 2;CURR 0.5;:OUTP ON");
    assertEquals("2.000000E+00;5.000000E-01;1", bench.send("VOLT?;CURR?;:OUTP?"));
  }

  @Test
  void anErrorInsideAMessageStopsTheRestOfIt() {
    bench.send("VOLT 1");
    bench.send("VOLT 99;VOLT 2");
    assertEquals(1, bench.number("VOLT?"));
  }

  @Test
  void resetSwitchesOffButKeepsTheEnables() {
    bench.send("*ESE 60;*SRE 32;VOLT 3;OUTP ON");
    bench.send("*RST");
    assertEquals("0;0.000000E+00", bench.send("OUTP?;VOLT?"));
    assertEquals("60;32", bench.send("*ESE?;*SRE?"));
  }

  @Test
  void clearEmptiesQueueAndEvents() {
    bench.send("NONSENSE");
    bench.send("*CLS");
    assertEquals("0,\"No error\"", bench.send("SYST:ERR?"));
    assertEquals("0", bench.send("*ESR?"));
  }

  @Test
  void theStatusByteSummarisesErrorsAndEvents() {
    bench.send("*CLS;*ESE 32;*SRE 32");
    bench.send("NONSENSE");
    // 4 error queue, 32 standard event summary, 64 master summary: IEEE 488.2, 11.2.
    assertEquals("100", bench.send("*STB?"));
  }

  @Test
  void minimumAndMaximumCanBeSetAndAsked() {
    bench.send("VOLT MAX");
    assertEquals(30, bench.number("VOLT?"));
    assertEquals(0, bench.number("VOLT? MIN"));
    assertEquals(5, bench.number("CURR? MAXIMUM"));
  }

  @Test
  void readingsFollowTheLoadWithNoiseAndResolution() {
    bench.send("VOLT 1;CURR 1;OUTP ON");
    bench.waitSeconds(0.1);
    assertEquals(1, bench.number("MEAS:VOLT?"), 0.003);
    assertEquals(1 / 10.01, bench.number("MEAS:CURR?"), 0.001);
    assertEquals(0.1, bench.number("MEAS:POW?"), 0.003);
    bench.send("OUTP OFF");
    bench.waitSeconds(0.2);
    assertEquals(0, bench.number("MEAS:VOLT?"), 0.003);
    assertEquals(0, bench.number("MEAS:CURR?"), 0.001);
  }

  @Test
  void regulationShowsInTheOperationRegister() {
    bench.send("VOLT 1;CURR 1;OUTP ON");
    assertEquals("256", bench.send("STAT:OPER:COND?"));
    bench.send("CURR 0.05");
    assertEquals("1024", bench.send("STAT:OPER:COND?"));
    assertEquals("0", bench.send("STAT:QUES:COND?"));
    assertEquals("1280", bench.send("STAT:OPER?"), "both were seen since the last look");
    assertEquals("0", bench.send("STAT:OPER:EVEN?"));
    bench.send("OUTP OFF");
    assertEquals("0", bench.send("STAT:OPER:COND?"));
  }

  @Test
  void overvoltageTripsLatchUntilCleared() {
    bench.send("VOLT:PROT 1.2;:CURR 1;:VOLT 1;:OUTP ON");
    bench.send("VOLT 2");
    bench.waitSeconds(0.05);
    assertEquals("0;1", bench.send("OUTP?;VOLT:PROT:TRIP?"));
    assertEquals("1", bench.send("STAT:QUES:COND?"));
    bench.send("OUTP ON");
    assertTrue(bench.send("SYST:ERR?").startsWith("-221,"));
    assertEquals("0", bench.send("OUTP?"));
    bench.send("VOLT 1;OUTP:PROT:CLE;:OUTP ON");
    assertEquals("1;0", bench.send("OUTP?;VOLT:PROT:TRIP?"));
  }

  @Test
  void overcurrentTripsAfterItsDelayOnly() {
    bench.send("CURR 1;CURR:PROT 0.2;:CURR:PROT:DEL 0.5;:VOLT 3;:OUTP ON");
    bench.waitSeconds(0.2);
    assertEquals("1", bench.send("OUTP?"));
    bench.waitSeconds(0.4);
    assertEquals("0;1", bench.send("OUTP?;CURR:PROT:TRIP?"));
    assertEquals("2", bench.send("STAT:QUES:COND?"));
  }

  @Test
  void aDisabledOvercurrentProtectionDoesNotTrip() {
    bench.send("CURR 1;CURR:PROT 0.2;:CURR:PROT:STAT OFF;:VOLT 3;:OUTP ON");
    bench.waitSeconds(1);
    assertEquals("1;0", bench.send("OUTP?;CURR:PROT:TRIP?"));
  }

  @Test
  void theOtherFamilyShowsRegulationInTheQuestionableRegister() {
    SupplySettings settings =
        SupplySettings.usual().withFamily(SupplySettings.StatusFamily.REGULATION_IN_QUESTIONABLE);
    SupplyBesideLoad other = new SupplyBesideLoad(settings, 10);
    assertEquals("0", other.send("STAT:QUES:COND?"), "both 0: output off");
    other.send("VOLT 1;CURR 1;OUTP ON");
    assertEquals("2", other.send("STAT:QUES:COND?"), "bit 1: constant voltage");
    other.send("CURR 0.05");
    assertEquals("1", other.send("STAT:QUES:COND?"), "bit 0: constant current");
    other.send("CURR 1;VOLT:PROT 0.5");
    other.waitSeconds(0.1);
    assertEquals("512", other.send("STAT:QUES:COND?"), "bit 9: overvoltage trip");
    assertEquals("0", other.send("STAT:OPER:COND?"));
  }

  @Test
  void inTheOtherFamilyAClearedTripBringsTheOutputBack() {
    SupplySettings settings =
        SupplySettings.usual().withFamily(SupplySettings.StatusFamily.REGULATION_IN_QUESTIONABLE);
    SupplyBesideLoad other = new SupplyBesideLoad(settings, 10);
    other.send("VOLT 1;CURR 1;OUTP ON;:VOLT:PROT 0.5");
    other.waitSeconds(0.1);
    assertEquals(0, other.number("MEAS:CURR?"), 0.001);
    other.send("VOLT:PROT 5;:VOLT:PROT:CLE");
    other.waitSeconds(0.1);
    assertEquals(0.1, other.number("MEAS:CURR?"), 0.001);
  }

  @Test
  void twoChannelsAreAddressedByListOrSelection() {
    SupplyBesideLoad two = new SupplyBesideLoad(SupplySettings.usual().withChannels(2), 10);
    two.send("VOLT 1,(@1);:VOLT 2,(@2);:OUTP ON,(@2)");
    assertEquals("0", two.send("OUTP? (@1)"));
    assertEquals("1", two.send("OUTP? (@2)"));
    two.send("INST:NSEL 2");
    assertEquals(2, two.number("VOLT?"));
    assertEquals("OUTP2", two.send("INST?"));
    assertEquals("256", two.send("STAT:OPER:INST:ISUM2:COND?"));
    assertEquals("0", two.send("STAT:OPER:INST:ISUM1:COND?"));
    two.send("VOLT 1,(@3)");
    assertTrue(two.send("SYST:ERR?").startsWith("-222,"));
  }

  @Test
  void theWatchdogSwitchesOffWhenNothingIsHeard() {
    bench.send("VOLT 1;CURR 1;OUTP:WDOG:DEL 0.5;:OUTP:WDOG ON;:OUTP ON");
    for (int i = 0; i < 20; i++) {
      assertEquals("1", bench.send("OUTP?"));
    }
    bench.waitSeconds(0.6);
    assertEquals("0", bench.send("OUTP?"));
  }

  @Test
  void readingsThatAreNoneHaveTheStandardsMarks() {
    SupplyBesideLoad nan =
        new SupplyBesideLoad(SupplySettings.usual(), 10, FaultSpec.parse("not-a-number"));
    assertEquals("9.91E37", nan.send("MEAS:VOLT?"));
    SupplyBesideLoad over =
        new SupplyBesideLoad(SupplySettings.usual(), 10, FaultSpec.parse("overflow-reading"));
    assertEquals("9.9E37", over.send("MEAS:CURR?"));
  }

  @Test
  void aSupplyThatResetsItselfForgetsEverything() {
    SupplyBesideLoad own =
        new SupplyBesideLoad(SupplySettings.usual(), 10, FaultSpec.parse("resets-itself@1s"));
    own.send("VOLT 1;CURR 1;OUTP ON");
    own.waitSeconds(1);
    assertEquals("0;0.000000E+00", own.send("OUTP?;VOLT?"));
  }

  @Property(tries = 500, seed = "1")
  void anyLineIsAnsweredOrRefused(@ForAll String line) {
    SupplyBesideLoad any = new SupplyBesideLoad(10);
    any.send(line.replace('\n', ' '));
    assertTrue(any.send("SYST:ERR?").matches("(-?[0-9]+,\".*\")"));
  }
}
