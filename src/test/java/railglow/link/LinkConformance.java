package railglow.link;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Collections;
import java.util.List;
import java.util.function.Function;
import org.junit.jupiter.api.Test;
import railglow.time.Waits;

/** What every link does, whatever the wire. */
abstract class LinkConformance extends BlockConformance {
  /** What went over an earlier connection may be looked at after what came over a later one. */
  private void awaitReceived(String line, int times) {
    for (int i = 0; i < 1000 && Collections.frequency(instrument.received(), line) < times; i++) {
      Waits.nanos(2 * MILLI);
    }
    assertEquals(times, Collections.frequency(instrument.received(), line), line);
  }

  @Test
  void aQuestionGetsItsAnswerWithoutTheLineEnd() throws Exception {
    instrument.answers(line -> line.equals("A?") ? "1.25\n" : "2.5\r\n");
    Link link = open(settings());
    assertEquals("1.25", link.exchange("A?", AMPLE));
    assertEquals("2.5", link.exchange("B?", AMPLE));
    assertTrue(link.inStep());
  }

  @Test
  void aMessageWithoutReplyArrivesBeforeTheNextQuestion() throws Exception {
    instrument.answers(line -> line.endsWith("?") ? "ok\n" : "");
    Link link = open(settings());
    link.send("VOLT 1.2", AMPLE);
    assertEquals("ok", link.exchange("VOLT?", AMPLE));
    List<String> received = instrument.received();
    assertEquals(
        List.of("VOLT 1.2", "VOLT?"), received.subList(received.size() - 2, received.size()));
  }

  @Test
  void whatWasMadeReadyIsSentInAnyStateAndTakesTheLinkOutOfStep() throws Exception {
    instrument.answers(line -> line.endsWith("?") ? "ok\n" : "");
    Link link = open(settings());
    ReadyMessage off = link.ready(List.of("INST:NSEL 2", "OUTP OFF"));

    assertTrue(link.sendWithoutMemory(off));
    assertFalse(link.inStep());
    assertTrue(link.sendWithoutMemory(off));

    link.resynchronise(AMPLE);
    assertEquals("ok", link.exchange("VOLT?", AMPLE));
    awaitReceived("INST:NSEL 2", 2);
    awaitReceived("OUTP OFF", 2);
    link.close();
    assertFalse(link.sendWithoutMemory(off));
  }

  @Test
  void aHundredExchangesStayInOrder() throws Exception {
    instrument.answers(line -> line + " is the question\n");
    Link link = open(settings());
    for (int i = 0; i < 100; i++) {
      assertEquals("Q" + i + "? is the question", link.exchange("Q" + i + "?", AMPLE));
    }
  }

  @Test
  void aReplyThatComesByteByByteIsTakenWhole() throws Exception {
    instrument.sendByteByByte();
    instrument.answers(line -> "+1.23456E+00\r\n");
    Link link = open(settings());
    assertEquals("+1.23456E+00", link.exchange("A?", AMPLE));
  }

  @Test
  void noReplyEndsInTimeAndTakesTheLinkOutOfStep() throws Exception {
    Link link = open(settings());
    long before = wire.clock().nanos();
    assertThrows(LinkTimeoutException.class, () -> link.exchange("A?", SHORT));
    long took = wire.clock().nanos() - before;
    assertTrue(took >= SHORT && took < 40 * SHORT, took + " ns");
    assertFalse(link.inStep());
  }

  @Test
  void outOfStepNothingIsAskedButOffMayBeSent() throws Exception {
    Link link = open(settings());
    assertThrows(LinkTimeoutException.class, () -> link.exchange("A?", SHORT));
    assertThrows(OutOfStepException.class, () -> link.exchange("B?", AMPLE));
    link.send("OUTP OFF", AMPLE);
    assertFalse(link.inStep());
    instrument.answers(line -> "0\n");
    link.resynchronise(AMPLE);
    assertEquals("0", link.exchange("OUTP?", AMPLE));
    assertFalse(instrument.received().contains("B?"));
    awaitReceived("OUTP OFF", 1);
  }

  @Test
  void aLateReplyIsNeverTakenAsTheAnswerToALaterQuestion() throws Exception {
    instrument.answers(line -> "");
    Link link = open(settings());
    assertThrows(LinkTimeoutException.class, () -> link.exchange("VOLT?", SHORT));
    wire.sendUnasked("11.11\n");
    instrument.answers(line -> line.equals("CURR?") ? "2.22\n" : "wrong\n");
    link.resynchronise(AMPLE);
    assertEquals("2.22", link.exchange("CURR?", AMPLE));
  }

  @Test
  void theRestOfATruncatedReplyIsForgotten() throws Exception {
    instrument.answers(line -> "1.2");
    Link link = open(settings());
    LinkTimeoutException e =
        assertThrows(LinkTimeoutException.class, () -> link.exchange("VOLT?", SHORT));
    assertTrue(e.getMessage().contains("\"1.2\""), e.getMessage());
    wire.sendUnasked("345\n");
    instrument.answers(line -> "7\n");
    link.resynchronise(AMPLE);
    assertEquals("7", link.exchange("CURR?", AMPLE));
  }

  @Test
  void twoRepliesToOneQuestionAreDoubtful() throws Exception {
    instrument.answers(line -> "1\n2\n");
    Link link = open(settings());
    assertThrows(
        OutOfStepException.class,
        () -> {
          link.exchange("A?", AMPLE);
          // where the second came in a segment of its own it is seen before the next question
          wire.port().idle(20 * MILLI);
          link.exchange("B?", AMPLE);
        });
    assertFalse(link.inStep());
    assertFalse(instrument.received().contains("B?"));
  }

  @Test
  void bytesThatNobodyAskedForStopTheNextQuestionButNotTheNextMessage() throws Exception {
    instrument.answers(line -> line.endsWith("?") ? "right\n" : "");
    Link link = open(settings());
    wire.sendUnasked("noise");
    wire.port().idle(20 * MILLI);
    link.send("OUTP OFF", AMPLE);
    assertFalse(link.inStep());
    assertThrows(OutOfStepException.class, () -> link.exchange("A?", AMPLE));
    link.resynchronise(AMPLE);
    assertEquals("right", link.exchange("B?", AMPLE));
    awaitReceived("OUTP OFF", 1);
    assertFalse(instrument.received().contains("A?"));
  }

  @Test
  void strayLineEndsAreNoReplies() throws Exception {
    instrument.answers(line -> "\r\n\n1\r\n\r\n");
    Link link = open(settings());
    assertEquals("1", link.exchange("A?", AMPLE));
    assertEquals("1", link.exchange("A?", AMPLE));
  }

  @Test
  void aReplyWithoutEndIsRefusedWhenItIsTooLong() throws Exception {
    instrument.answers(line -> "x".repeat(5000));
    Link link = open(settings().withMaxReplyBytes(1000));
    assertThrows(OutOfStepException.class, () -> link.exchange("A?", AMPLE));
  }

  @Test
  void aLongReplyIsTakenWhole() throws Exception {
    String reply = "1234567890".repeat(5000);
    instrument.answers(line -> reply + "\n");
    Link link = open(settings());
    assertEquals(reply, link.exchange("A?", AMPLE));
  }

  @Test
  void anEchoIsTakenBeforeTheReply() throws Exception {
    Link link = openEchoing(line -> line.endsWith("?") ? line + "\n5\n" : line + "\n");
    link.send("VOLT 1", AMPLE);
    assertEquals("5", link.exchange("VOLT?", AMPLE));
  }

  @Test
  void aWrongEchoTakesTheLinkOutOfStep() throws Exception {
    Link link = openEchoing(line -> "VOLR?\n5\n");
    assertThrows(OutOfStepException.class, () -> link.exchange("VOLT?", AMPLE));
  }

  private Link openEchoing(Function<String, String> script) throws Exception {
    instrument.answers(line -> line.equals("ID?") ? "ID?\nme\n" : script.apply(line));
    return open(settings().withEcho(true).withProof(ProofQuestion.fixed("ID?", "me"::equals)));
  }

  @Test
  void theOtherLineEndsWorkToo() throws Exception {
    instrument.answers(line -> "7\r");
    Link link =
        open(
            settings()
                .withEnds(LineEnd.CRLF, LineEnd.CR)
                .withProof(ProofQuestion.fixed("N?", "7"::equals)));
    assertEquals("7", link.exchange("A?", AMPLE));
    assertEquals("7", link.exchange("B?", AMPLE));
  }

  @Test
  void aMessageOfTwoLinesIsTheCallersMistake() throws Exception {
    Link link = open(settings());
    assertThrows(IllegalArgumentException.class, () -> link.send("VOLT 1\nOUTP ON", AMPLE));
    assertThrows(IllegalArgumentException.class, () -> link.exchange("A?\r", AMPLE));
    assertThrows(IllegalArgumentException.class, () -> link.send("VOLT 1\u2126", AMPLE));
    assertTrue(link.inStep());
  }

  @Test
  void thePauseBetweenMessagesIsKept() throws Exception {
    instrument.answers(line -> line.endsWith("?") ? "1\n" : "");
    Link link = open(settings().withPause(30 * MILLI));
    long before = wire.clock().nanos();
    for (int i = 0; i < 3; i++) {
      link.send("VOLT 1", AMPLE);
      link.exchange("VOLT?", AMPLE);
    }
    long took = wire.clock().nanos() - before;
    assertTrue(took >= 5 * 30 * MILLI, took + " ns");
  }

  @Test
  void anInterruptEndsNoExchangeAndStaysPending() throws Exception {
    instrument.answers(line -> "1\n");
    Link link = open(settings());
    Thread.currentThread().interrupt();
    assertEquals("1", link.exchange("A?", AMPLE));
    assertTrue(Thread.interrupted());
    assertEquals("1", link.exchange("A?", AMPLE));
  }

  @Test
  void aConnectionThatEndsIsNoticedAndNamed() throws Exception {
    instrument.answers(line -> "1\n");
    Link link = open(settings());
    link.exchange("A?", AMPLE);
    wire.cut();
    LinkException e = assertThrows(LinkException.class, () -> link.exchange("B?", 2000 * MILLI));
    assertTrue(e instanceof LinkLostException, e.toString());
    assertFalse(link.inStep());
  }

  @Test
  void aClosedLinkStaysClosed() throws Exception {
    Link link = open(settings());
    link.close();
    link.close();
    assertThrows(OutOfStepException.class, () -> link.exchange("A?", AMPLE));
    assertThrows(OutOfStepException.class, () -> link.send("A", AMPLE));
    assertThrows(OutOfStepException.class, () -> link.resynchronise(AMPLE));
  }

  @Test
  void aLinkThatWasNeverOpenedAsksNothing() throws Exception {
    wire = connect(instrument);
    Link link = new PortLink(wire.port(), settings(), wire.clock(), Transcript.NONE);
    assertFalse(link.inStep());
    assertThrows(OutOfStepException.class, () -> link.exchange("A?", AMPLE));
  }
}
