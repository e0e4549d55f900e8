package railglow.scpi;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class HeadersTest {
  private static Optional<List<Integer>> match(String pattern, String sent) {
    ProgramMessage message = ProgramMessage.parse(sent);
    assertTrue(message.error().isEmpty(), sent);
    return HeaderPattern.of(pattern).match(message.commands().get(0));
  }

  @ParameterizedTest
  // SCPI-1999 volume 1, 6.2.1; examples of the Keithley 2000 and 6430 manuals
  @CsvSource({
    "VOLTage,VOLT",
    "CURRent,CURR",
    "MEASure,MEAS",
    "OUTPut,OUTP",
    "IMMediate,IMM",
    "FORMat,FORM",
    "POWer,POW",
    "FREQuency,FREQ",
    "FREE,FREE",
    "TRIGger,TRIG"
  })
  void theShortFormFollowsTheRule(String written, String shortForm) {
    assertEquals(shortForm, Mnemonic.of(written).shortForm());
    assertEquals(shortForm, Mnemonic.shorten(written));
  }

  @Test
  void anInstrumentMayBreakTheRuleByWritingItsOwnShortForm() {
    assertEquals("TC", Mnemonic.of("TCouple").shortForm());
  }

  @Test
  void nothingBetweenTheShortAndTheLongFormIsLegal() {
    Mnemonic system = Mnemonic.of("SYSTem");
    assertTrue(system.matches("SYST"));
    assertTrue(system.matches("system"));
    assertFalse(system.matches("SYSTE"));
    Mnemonic voltage = Mnemonic.of("VOLTage");
    assertFalse(voltage.matches("VOL"));
    assertFalse(voltage.matches("VOLTAG"));
    assertFalse(voltage.matches("VOLTAGES"));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "VOLT 1",
        "volt 1",
        "SOUR:VOLT 1",
        "VOLTAGE:LEVEL 1",
        "SOURCE:VOLT:LEV:IMM:AMPL 1",
        "VOLT:AMPL 1",
        "VOLT:IMM 1",
        ":VOLT 1"
      })
  void optionalNodesMayBeLeftOut(String sent) {
    assertEquals(
        Optional.of(List.of()), match("[SOURce:]VOLTage[:LEVel][:IMMediate][:AMPLitude]", sent));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"VOL 1", "VOLT?", "SOUR 1", "VOLT:PROT 1", "*VOLT", "VOLT:IMM:LEV 1", "VOLT1 1"})
  void otherHeadersDoNotMatch(String sent) {
    assertEquals(Optional.empty(), match("[SOURce:]VOLTage[:LEVel][:IMMediate][:AMPLitude]", sent));
  }

  @Test
  void numberedNodesGiveTheirNumbers() {
    assertEquals(Optional.of(List.of(1)), match("OUTPut<n>[:STATe]", "OUTP ON"));
    assertEquals(Optional.of(List.of(2)), match("OUTPut<n>[:STATe]", "OUTPUT2:STAT ON"));
    assertEquals(Optional.of(List.of(2)), match("[SOURce<n>:]VOLTage", "SOUR2:VOLT 1"));
    assertEquals(Optional.of(List.of()), match("[SOURce<n>:]VOLTage", "VOLT 1"));
    assertEquals(Optional.empty(), match("OUTPut<n>[:STATe]", "OUTP99999 ON"));
    assertEquals(Optional.of(List.of()), match("STATus:L1?", "STAT:L1?"));
  }

  @Test
  void commonCommandsAndQueriesAreTheirOwn() {
    assertEquals(Optional.of(List.of()), match("*IDN?", "*idn?"));
    assertEquals(Optional.empty(), match("*IDN?", "*IDN"));
    assertEquals(Optional.empty(), match("*IDN?", "IDN?"));
  }

  @Test
  void theTableFindsOrNamesTheUnknownHeader() throws ScpiException {
    HeaderTable<String> table =
        new HeaderTable<String>().add("OUTPut<n>[:STATe]", "set").add("OUTPut<n>[:STATe]?", "ask");
    Command known = ProgramMessage.parse("OUTP3?").commands().get(0);
    assertEquals(new HeaderTable.Found<>("ask", List.of(3)), table.find(known));
    Command unknown = ProgramMessage.parse("*CLS;OUTPU?").commands().get(1);
    ScpiException e = assertThrows(ScpiException.class, () -> table.find(unknown));
    assertEquals(ScpiError.UNDEFINED_HEADER, e.error());
    assertEquals(5, e.position());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"", "?", "*", "[VOLT]age", "volt", "VOLT[:LEV", "VOLT [:LEV]", "[]", "*A:B"})
  void aPatternThatIsNoneIsRefused(String written) {
    assertThrows(IllegalArgumentException.class, () -> HeaderPattern.of(written));
  }

  @Test
  void messagesAreBuiltSoThatNoHeaderDependsOnTheOneBefore() {
    String text = ProgramText.compound("MEAS:VOLT?", "MEAS:CURR?", "*STB?");
    assertEquals("MEAS:VOLT?;:MEAS:CURR?;*STB?", text);
    assertEquals(
        List.of("MEAS:VOLT?", "MEAS:CURR?", "*STB?"),
        ProgramMessage.parse(text).commands().stream().map(Command::headerText).toList());
    assertEquals("VOLT 1.2", ProgramText.command("VOLT", ProgramText.number(1.2)));
  }
}
