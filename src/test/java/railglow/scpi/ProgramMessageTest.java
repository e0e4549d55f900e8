package railglow.scpi;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ProgramMessageTest {
  private static List<String> headers(String text) {
    ProgramMessage message = ProgramMessage.parse(text);
    assertEquals("", message.error().map(ScpiException::getMessage).orElse(""));
    return message.commands().stream().map(Command::headerText).toList();
  }

  @Test
  void aLeadingColonGoesBackToTheRootOfTheTree() {
    // Chroma 63200A manual, p. 66
    assertEquals(List.of("CURR:STAT:L1", "VOLT:L1"), headers("CURR:STAT:L1 3;:VOLT:L1 5"));
  }

  @Test
  void aHeaderWithoutColonContinuesInTheBranchOfTheOneBefore() {
    assertEquals(
        List.of("VOLT:PROT", "VOLT:LEV", "VOLT:STEP:INCR"),
        headers("VOLT:PROT 5;LEV 3;STEP:INCR 1"));
    assertEquals(List.of("VOLT", "CURR"), headers("VOLT 5;CURR 1"));
  }

  @Test
  void commonCommandsDoNotChangeTheBranch() {
    assertEquals(List.of("MEAS:VOLT?", "*OPC?", "MEAS:CURR?"), headers("MEAS:VOLT?;*OPC?;CURR?"));
  }

  @Test
  void commandsBeforeAnErrorAreKept() {
    ProgramMessage message = ProgramMessage.parse("OUTP OFF;VOLT @");
    assertEquals(1, message.commands().size());
    assertEquals("OUTP", message.commands().get(0).headerText());
    assertEquals(ScpiError.INVALID_CHARACTER, message.error().orElseThrow().error());
    assertEquals(14, message.error().orElseThrow().position());
  }

  @Test
  void anEmptyMessageAsksForNothing() {
    assertEquals(List.of(), headers(""));
    assertEquals(List.of(), headers("  \t "));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "VOLT 1;|-102",
        "VOLT 1;;CURR 2|-102",
        ":|-102",
        "VOLT: 1|-102",
        "1VOLT|-102",
        "VOLT\u00e9|-111",
        "\u00e9|-101",
        "VOLT,1|-111",
        // IEEE 488.2, 7.6.1.4.1: at most 12 characters
        "ABCDEFGHIJKLM 1|-112",
        "VOLT 1 2|-103",
        "VOLT 1,|-109",
        "VOLT ,1|-109",
        "VOLT -|-121",
        // IEEE 488.2, 7.7.2.4.1
        "VOLT 1E32001|-123",
        "VOLT 1ABCDEFGHIJKLM|-134",
        "OUTP ABCDEFGHIJKLM|-144",
        "DISP:TEXT \"no end|-151",
        "DATA #19abc|-161",
        "DATA #3ab|-161",
        "DATA #HG|-121",
        "DATA #B12|-121",
        "DATA (@1|-170",
      })
  void eachMistakeHasTheStandardsNumber(String text, int code) {
    ScpiException error = ProgramMessage.parse(text).error().orElseThrow();
    assertEquals(code, error.error().code(), error.getMessage());
  }

  @Test
  void digitsAreLimitedWithoutTheLeadingZeros() throws ScpiException {
    // IEEE 488.2, 7.7.2.4.1: 255 digits, leading zeros not counted
    String zeros = "0".repeat(300);
    assertEquals(1, only("V " + zeros + "1").number());
    assertEquals(1e-300, only("V 0." + "0".repeat(299) + "1").number(), 1e-310);
    assertEquals(1e255, only("V " + "9".repeat(255)).number(), 1e242);
    assertEquals(
        ScpiError.TOO_MANY_DIGITS,
        ProgramMessage.parse("V " + "9".repeat(256)).error().orElseThrow().error());
  }

  @Test
  void blocksOfBothKindsAreRead() throws ScpiException {
    byte[] bytes = "hello, \n;'\"\0\u00ff".getBytes(StandardCharsets.ISO_8859_1);
    assertArrayEquals(bytes, only("DATA " + ProgramText.block(bytes)).block());
    assertArrayEquals(
        bytes, only("DATA #0" + new String(bytes, StandardCharsets.ISO_8859_1)).block());
    // a length with leading zeros is legal: Chroma 63200A manual, #501024...
    String kilo = "x".repeat(1024);
    assertEquals(1024, only("DATA #501024" + kilo).block().length);
    assertEquals(1024, only("DATA #41024" + kilo).block().length);
    assertEquals(2, ProgramMessage.parse("DATA #12ab,#12cd").commands().get(0).arguments().size());
  }

  @Test
  void stringsMayHoldTheOtherQuoteAndTheirOwnDoubled() throws ScpiException {
    assertEquals("it's; a \"test\"", only("D \"it's; a \"\"test\"\"\"").string());
    assertEquals("it's; a \"test\"", only("D 'it''s; a \"test\"'").string());
  }

  @Test
  void expressionsKeepWhatStandsBetweenTheParentheses() throws ScpiException {
    assertEquals("@1,(2:3)", only("ROUT (@1,(2:3))").expression());
  }

  @Test
  void everyWrongKindOfParameterHasItsOwnNumber() {
    assertWrong(ScpiError.NUMERIC_DATA_NOT_ALLOWED, () -> only("D 1").word());
    assertWrong(ScpiError.CHARACTER_DATA_NOT_ALLOWED, () -> only("D MAX").number());
    assertWrong(ScpiError.STRING_DATA_NOT_ALLOWED, () -> only("D 'x'").number());
    assertWrong(ScpiError.BLOCK_DATA_NOT_ALLOWED, () -> only("D #11x").string());
    assertWrong(ScpiError.EXPRESSION_DATA_NOT_ALLOWED, () -> only("D (1)").bool());
    assertWrong(ScpiError.SUFFIX_NOT_ALLOWED, () -> only("D 1 V").number());
    assertWrong(ScpiError.INVALID_SUFFIX, () -> only("D 1 A").number("V"));
    assertWrong(ScpiError.ILLEGAL_PARAMETER_VALUE, () -> only("D MAX").bool());
    assertWrong(ScpiError.DATA_OUT_OF_RANGE, () -> only("D 1E400").number());
    assertWrong(ScpiError.DATA_OUT_OF_RANGE, () -> only("D 300").integer(0, 255));
    Command command = ProgramMessage.parse("D 1,2").commands().get(0);
    assertWrong(ScpiError.MISSING_PARAMETER, () -> command.argument(2));
    assertWrong(
        ScpiError.PARAMETER_NOT_ALLOWED,
        () -> {
          command.requireArguments(0, 1);
          return "";
        });
  }

  @Test
  void booleansAreWordsOrNumbers() throws ScpiException {
    assertTrue(only("OUTP on").bool());
    assertFalse(only("OUTP OFF").bool());
    assertTrue(only("OUTP 1").bool());
    assertTrue(only("OUTP -2").bool());
    assertFalse(only("OUTP 0.4").bool());
    assertFalse(only("OUTP 0").bool());
    assertTrue(only("VOLT min").is("MINimum"));
    assertTrue(only("VOLT MINIMUM").is("MINimum"));
    assertFalse(only("VOLT MINI").is("MINimum"));
  }

  private static Argument only(String text) throws ScpiException {
    ProgramMessage message = ProgramMessage.parse(text);
    if (message.error().isPresent()) {
      throw message.error().get();
    }
    assertEquals(1, message.commands().size());
    assertEquals(1, message.commands().get(0).arguments().size());
    return message.commands().get(0).argument(0);
  }

  private interface Reading {
    Object read() throws ScpiException;
  }

  private static void assertWrong(ScpiError expected, Reading reading) {
    try {
      throw new AssertionError("read " + reading.read());
    } catch (ScpiException e) {
      assertEquals(expected, e.error());
    }
  }
}
