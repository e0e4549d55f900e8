package railglow.scpi;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ScpiReplyTest {
  @Test
  void answersStandBetweenSemicolonsAndItemsBetweenCommas() throws ScpiException {
    // Keithley 2001 manual: multiple response messages
    ScpiReply reply = ScpiReply.parse("1,2.5;+3.00E-1;CV,\"a;b,c\",#13x;y");
    assertEquals(3, reply.answers().size());
    assertEquals(2.5, reply.answers().get(0).get(1).number());
    assertEquals(0.3, reply.answers().get(1).get(0).number());
    List<ReplyItem> last = reply.answers().get(2);
    assertEquals("CV", last.get(0).word());
    assertEquals("a;b,c", last.get(1).string());
    assertArrayEquals("x;y".getBytes(), last.get(2).block());
  }

  @ParameterizedTest
  @CsvSource({
    "12,NR1",
    "-1,NR1",
    "+0,NR1",
    "1.50,NR2",
    ".5,NR2",
    "1.5E3,NR3",
    "+1.5e-03,NR3",
    "#HFF,NON_DECIMAL",
    "CC,WORD",
    "'text',STRING",
    "#12ab,BLOCK",
    "5.00V,OTHER",
    "12:30,OTHER"
  })
  void eachFormIsRecognised(String text, ReplyItem.Kind kind) throws ScpiException {
    assertEquals(kind, ScpiReply.item(text.equals("text") ? "'text'" : text).kind());
  }

  @Test
  void whiteSpaceAroundAnItemIsNoPartOfIt() throws ScpiException {
    assertEquals(1.25, ScpiReply.number(" +1.25\r"));
  }

  @Test
  void instrumentsThatAddTheUnitAreReadOnlyWhereThatIsExpected() throws ScpiException {
    assertEquals(5.0, ScpiReply.item("5.00V").number("V"));
    assertEquals(0.12, ScpiReply.item("120 mA").number("A"));
    assertEquals(5.0, ScpiReply.item("5.00").number("V"));
    assertThrows(ScpiException.class, () -> ScpiReply.item("5.00V").number());
    assertThrows(ScpiException.class, () -> ScpiReply.item("5.00A").number("V"));
    assertThrows(ScpiException.class, () -> ScpiReply.item("V").number("V"));
  }

  @Test
  void aTruncatedOrGarbledNumberIsNoNumber() {
    for (String text :
        new String[] {"", " ", "+", "1.2.3", "1E", "1.0E+", "1O", "--1", "1 2", "0x1"}) {
      assertThrows(ScpiException.class, () -> ScpiReply.number(text), text);
    }
    ScpiException e = assertThrows(ScpiException.class, () -> ScpiReply.number("1.2\u0007"));
    assertEquals(ScpiError.INVALID_CHARACTER, e.error());
    assertEquals(3, e.position());
  }

  @Test
  void aReplyWithAnotherNumberOfAnswersIsRefused() {
    assertThrows(ScpiException.class, () -> ScpiReply.items("1;2;3", 2));
    assertThrows(ScpiException.class, () -> ScpiReply.items("1", 2));
    assertThrows(ScpiException.class, () -> ScpiReply.items("1,2;3", 2));
    assertThrows(ScpiException.class, () -> ScpiReply.number("1;2"));
  }

  @Test
  void booleansAndIntegersAreExact() throws ScpiException {
    assertTrue(ScpiReply.item("1").bool());
    assertFalse(ScpiReply.item("OFF").bool());
    assertThrows(ScpiException.class, () -> ScpiReply.item("2").bool());
    assertThrows(ScpiException.class, () -> ScpiReply.item("1.0").bool());
    assertEquals(1024, ScpiReply.item("1.024E3").integer(0, 65535));
    assertThrows(ScpiException.class, () -> ScpiReply.item("1.5").integer(0, 10));
    assertThrows(ScpiException.class, () -> ScpiReply.item("11").integer(0, 10));
    assertThrows(ScpiException.class, () -> ScpiReply.item("NAN").integer(0, 10));
  }

  @Test
  void theMessageShowsWhatCame() {
    ScpiException e = assertThrows(ScpiException.class, () -> ScpiReply.number("OVLD"));
    assertEquals("character 1: wanted a number, got 'OVLD' (-104 Data type error)", e.getMessage());
  }

  @Test
  void anIdentityHasFourFieldsWhateverComes() {
    Identity identity = Identity.parse(" ACME , PS-1,0,1.0,rev b \r");
    assertEquals("ACME", identity.maker());
    assertEquals("PS-1", identity.model());
    assertEquals("0", identity.serial());
    assertEquals("1.0,rev b", identity.firmware());
    assertEquals(new Identity("x", "", "", "", "x"), Identity.parse("x"));
    assertEquals(new Identity("", "", "", "", ""), Identity.parse(""));
  }
}
