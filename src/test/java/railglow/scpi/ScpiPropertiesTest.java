package railglow.scpi;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Size;

class ScpiPropertiesTest {
  @Provide
  Arbitrary<String> wireText() {
    String[] pieces = {
      "VOLT", ":", ";", " ", "?", "*IDN?", "1.5", "E", "+", "-", "#", "#H", "#0", "#13", "'", "\"",
      ",", "(", ")", "9.9E37", "MA", "\n", "\0", "\u00ff", "ON", "@", "NAN", ".", "0", "9"
    };
    return Arbitraries.of(pieces).list().ofMaxSize(24).map(list -> String.join("", list));
  }

  @Property(seed = "20")
  void everyTextGivesCommandsAndAtMostOneErrorInsideTheText(@ForAll("wireText") String text) {
    ProgramMessage message = ProgramMessage.parse(text);
    message.error().ifPresent(e -> assertTrue(e.position() >= 0 && e.position() <= text.length()));
  }

  @Property(seed = "21")
  void everyReplyGivesItemsOrAnErrorInsideTheText(@ForAll("wireText") String text) {
    try {
      for (var answer : ScpiReply.parse(text).answers()) {
        for (ReplyItem item : answer) {
          assertTrue(item.position() <= text.length());
        }
      }
    } catch (ScpiException e) {
      assertTrue(e.position() >= 0 && e.position() <= text.length());
    }
  }

  @Property(seed = "22")
  void anyBytesGiveAValueOrAScpiError(@ForAll byte @Size(max = 200) [] bytes) {
    String text = new String(bytes, StandardCharsets.ISO_8859_1);
    ScpiFuzz.everythingThatReads(text);
  }

  @Property(seed = "23")
  void aSentNumberIsReceivedExactly(@ForAll @DoubleRange(min = -1e30, max = 1e30) double value)
      throws ScpiException {
    String sent = "VOLT " + ProgramText.number(value);
    double received = ProgramMessage.parse(sent).commands().get(0).argument(0).number("V");
    assertEquals(value == 0 ? 0.0 : value, received);
  }

  @Property(seed = "24")
  void aReplyOfSixDecimalsIsReadToSixDecimals(
      @ForAll @DoubleRange(min = -1000, max = 1000) double value) throws ScpiException {
    assertEquals(value, ScpiReply.number(ReplyText.nr2(value, 6)), 0.5000001e-6);
    assertEquals(value, ScpiReply.number(ReplyText.nr3(value, 9)), Math.abs(value) * 1e-9);
  }

  @Property(seed = "25")
  void aStringComesBackAsItWas(@ForAll String content) throws ScpiException {
    assertEquals(content, ScpiReply.item(ReplyText.string(content)).string());
    String oneLine = content.replace('\n', ' ').replace('\r', ' ');
    String sent = "D " + ProgramText.string(oneLine);
    assertEquals(oneLine, ProgramMessage.parse(sent).commands().get(0).argument(0).string());
  }

  @Property(seed = "26")
  void aBlockComesBackAsItWas(@ForAll byte @Size(max = 300) [] bytes) throws ScpiException {
    assertArrayEquals(bytes, ScpiReply.item(ProgramText.block(bytes)).block());
  }

  @Property(seed = "27")
  void anErrorEntryComesBackAsItWas(@ForAll short code, @ForAll @Size(max = 255) String text)
      throws ScpiException {
    if (text.isBlank() || text.length() > 255) {
      return;
    }
    ErrorEntry entry = new ErrorEntry(code, text);
    assertEquals(entry, ErrorEntry.parse(entry.format()));
  }

  @Example
  void aLongRunOfTheWorstTextIsReadToItsEnd() {
    String[] worst = {"(", "'", "#", "0", "9", "A:", ";", ",", "1,", "A;", "''", "#H1,", "E", " "};
    assertTimeoutPreemptively(
        Duration.ofMinutes(3),
        () -> {
          for (String piece : worst) {
            String text = piece.repeat(30_000 / piece.length());
            ScpiFuzz.everythingThatReads(text);
            ScpiFuzz.everythingThatReads("A " + text);
          }
        });
  }
}
