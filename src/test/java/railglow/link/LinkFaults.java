package railglow.link;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Test;
import railglow.scpi.ScpiException;
import railglow.scpi.ScpiReply;

/** Everything that goes wrong on wires, on each of them: no wrong answer is ever taken. */
abstract class LinkFaults extends LinkConformance {
  static final ProofQuestion MARKER = ProofQuestion.marker("*ESE %d", "*ESE?", 128, 255);

  /** Answers with the answer of the question before. */
  private final class OneBehind {
    private String held = "";
    private String register = "";

    String answer(String line) {
      if (line.startsWith("*ESE ")) {
        register = line.substring(5);
      }
      if (!line.endsWith("?")) {
        return "";
      }
      String now = held;
      held = line.equals("*ESE?") ? register + "\n" : line + "=1\n";
      return now;
    }
  }

  @Test
  void anInstrumentThatIsOneAnswerBehindIsNeverBelieved() throws Exception {
    instrument.answers(new OneBehind()::answer);
    wire = connect(instrument);
    Link link =
        new PortLink(wire.port(), settings().withProof(MARKER), wire.clock(), Transcript.NONE);
    for (int i = 0; i < 4; i++) {
      String question = "Q" + i + "?";
      try {
        if (!link.inStep()) {
          link.resynchronise(6 * SHORT);
        }
        assertEquals(question + "=1", link.exchange(question, SHORT));
      } catch (LinkTimeoutException e) {
        assertFalse(link.inStep());
      }
    }
    assertFalse(link.inStep());
  }

  @Test
  void garbageInPlaceOfAReplyIsNoNumber() throws Exception {
    Random random = new Random(30);
    instrument.answers(
        line -> {
          StringBuilder noise = new StringBuilder("\u0081");
          for (int i = 0; i < 40; i++) {
            noise.append((char) (random.nextInt(245) + 11));
          }
          return noise.toString().replace("\r", "x") + "\n";
        });
    Link link = open(settings());
    for (int i = 0; i < 20; i++) {
      String reply = link.exchange("VOLT?", AMPLE);
      assertThrows(ScpiException.class, () -> ScpiReply.number(reply), reply);
    }
  }

  @Test
  void noiseWithoutEndTimesOut() throws Exception {
    instrument.answers(line -> "\u0080\u00ff\u0001");
    Link link = open(settings());
    LinkTimeoutException e =
        assertThrows(LinkTimeoutException.class, () -> link.exchange("VOLT?", SHORT));
    assertTrue(e.getMessage().contains("\\x80\\xff\\x01"), e.getMessage());
  }

  @Test
  void anEchoNobodyToldOfIsNoNumber() throws Exception {
    instrument.answers(line -> line + "\n1.5\n");
    Link link = open(settings());
    // seen as a second reply, at once or before the next question
    assertThrows(
        OutOfStepException.class,
        () -> {
          String reply = link.exchange("VOLT?", AMPLE);
          assertThrows(ScpiException.class, () -> ScpiReply.number(reply));
          wire.port().idle(20 * MILLI);
          link.exchange("CURR?", AMPLE);
        });
  }

  @Test
  void aConnectionThatEndsInsideAReplyGivesNoReply() throws Exception {
    instrument.answers(
        line -> {
          if (line.equals("HALF?")) {
            return "1.2";
          }
          return "7\n";
        });
    Link link = open(settings());
    assertThrows(LinkTimeoutException.class, () -> link.exchange("HALF?", SHORT));
    wire.cut();
    assertThrows(LinkException.class, () -> link.exchange("VOLT?", SHORT));
    assertFalse(link.inStep());
  }

  @Test
  void aTimeOutInTheMiddleOfManyExchangesNeverShiftsTheAnswers() throws Exception {
    Random random = new Random(31);
    instrument.answers(
        line -> {
          String answer = line.replace("?", "") + "\n";
          int fate = random.nextInt(10);
          return fate == 0 ? "" : fate == 1 ? answer.substring(0, 1) : answer;
        });
    Link link = open(settings());
    int answered = 0;
    for (int i = 0; i < 60; i++) {
      try {
        assertEquals("Q" + i, link.exchange("Q" + i + "?", SHORT));
        answered++;
      } catch (LinkTimeoutException e) {
        wire.sendUnasked("Q" + i + "\n");
        link.resynchronise(AMPLE);
      }
    }
    assertTrue(answered > 30, answered + " answered");
  }
}
