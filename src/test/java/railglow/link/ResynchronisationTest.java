package railglow.link;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import org.junit.jupiter.api.Test;

/** How a line that does not forget is brought back into step, in invented time. */
class ResynchronisationTest {
  private static final long MILLI = 1_000_000;
  private static final BytePort.Traits LINE = new BytePort.Traits(false, false, false);
  private static final BytePort.Traits USB = new BytePort.Traits(false, true, true);
  private static final ProofQuestion MARKER = ProofQuestion.marker("*ESE %d", "*ESE?", 128, 255);
  private final ScriptedInstrument instrument = new ScriptedInstrument();
  private MemoryWire wire;

  private Link link(BytePort.Traits traits, ProofQuestion proof) {
    wire = new MemoryWire(instrument, traits);
    return new PortLink(
        wire.port(), LinkSettings.USUAL.withProof(proof), wire.clock(), Transcript.NONE);
  }

  @Test
  void theMarkerIsAnotherNumberEachTime() {
    assertEquals(List.of("*ESE 128"), MARKER.attempt(0).before());
    assertEquals(List.of("*ESE 129"), MARKER.attempt(1).before());
    assertEquals(List.of("*ESE 128"), MARKER.attempt(128).before());
    assertTrue(answers(1, "129"));
    assertTrue(answers(1, "+129"));
    assertFalse(answers(1, "128"));
    assertFalse(answers(1, "129.5"));
  }

  private static boolean answers(int attempt, String reply) {
    return MARKER.attempt(attempt).questions().get(0).answer().test(reply);
  }

  @Test
  void aReplySlowerThanTheSilenceIsNotTakenForTheProof() throws Exception {
    // answers come 300 ms late, later than the 200 ms of silence that the link waits for
    Deque<String> registers = new ArrayDeque<>();
    instrument.answers(
        line -> {
          if (line.startsWith("*ESE ")) {
            registers.add(line.substring(5));
          } else if (line.equals("*ESE?")) {
            wire.port().deliver(registers.getLast() + "\n", 300 * MILLI);
          } else {
            wire.port().deliver("1.5\n", 300 * MILLI);
          }
          return "";
        });
    Link link = link(LINE, MARKER);
    link.resynchronise(10_000 * MILLI);
    assertThrows(LinkTimeoutException.class, () -> link.exchange("A?", 50 * MILLI));
    link.resynchronise(10_000 * MILLI);
    assertEquals("1.5", link.exchange("B?", 1_000 * MILLI));
    assertEquals("1.5", link.exchange("C?", 1_000 * MILLI));
  }

  @Test
  void anIdentityThatComesTwiceProvesNothing() throws Exception {
    int[] asked = {0};
    instrument.hideIdentity();
    instrument.answers(
        line -> {
          if (line.equals("*IDN?") && ++asked[0] == 1) {
            return ScriptedInstrument.IDENTITY + "\n" + ScriptedInstrument.IDENTITY + "\n";
          }
          return ScriptedInstrument.IDENTITY + "\n";
        });
    Link link = link(LINE, LinkSettings.USUAL.proof());
    link.resynchronise(5_000 * MILLI);
    assertEquals(2, asked[0]);
  }

  /** Gives each answer to the next question, for good. */
  private void staysOneAnswerBehind() {
    instrument.hideIdentity();
    String[] register = {"0"};
    String[] held = {""};
    instrument.answers(
        line -> {
          if (line.startsWith("*ESE ")) {
            register[0] = line.substring(5);
            return "";
          }
          String before = held[0];
          held[0] =
              switch (line) {
                case "*IDN?" -> ScriptedInstrument.IDENTITY + "\n";
                case "*ESE?" -> register[0] + "\n";
                default -> "1.25\n";
              };
          return before;
        });
  }

  @Test
  void anInstrumentThatStaysOneAnswerBehindIsNotBelievedOnceWithAMarker() {
    for (BytePort.Traits traits : new BytePort.Traits[] {LINE, USB}) {
      staysOneAnswerBehind();
      Link link = link(traits, MARKER);
      assertThrows(LinkTimeoutException.class, () -> link.resynchronise(5_000 * MILLI));
      assertFalse(link.inStep());
    }
  }

  @Test
  void norWithAnIdentityAndANumberBehindIt() {
    ProofQuestion proof = LinkSettings.USUAL.proof().then("MEAS:VOLT?", "1.25"::equals);
    for (BytePort.Traits traits : new BytePort.Traits[] {LINE, USB}) {
      staysOneAnswerBehind();
      Link link = link(traits, proof);
      assertThrows(LinkTimeoutException.class, () -> link.resynchronise(5_000 * MILLI));
      assertFalse(link.inStep());
    }
  }

  @Test
  void anInstrumentThatWasOneAnswerBehindIsBelievedAfterwards() throws Exception {
    ProofQuestion proof = LinkSettings.USUAL.proof().then("MEAS:VOLT?", "1.25"::equals);
    staysOneAnswerBehind();
    Link link = link(LINE, proof);
    assertThrows(LinkTimeoutException.class, () -> link.resynchronise(2_000 * MILLI));
    instrument.answers(
        line -> line.equals("*IDN?") ? ScriptedInstrument.IDENTITY + "\n" : "1.25\n");
    link.resynchronise(5_000 * MILLI);
    assertEquals("1.25", link.exchange("MEAS:VOLT?", 100 * MILLI));
  }

  @Test
  void aLineThatNeverFallsSilentIsGivenUpInTime() {
    instrument.hideIdentity();
    Link link = link(LINE, MARKER);
    for (int i = 0; i < 1000; i++) {
      wire.port().deliver("noise\n", i * 50 * MILLI);
    }
    long before = wire.clock().nanos();
    assertThrows(LinkTimeoutException.class, () -> link.resynchronise(2_000 * MILLI));
    assertTrue(wire.clock().nanos() - before <= 2_000 * MILLI);
    assertFalse(link.inStep());
  }

  @Test
  void aFirstQuestionThatIsSwallowedIsAskedAgain() throws Exception {
    int[] asked = {0};
    instrument.hideIdentity();
    instrument.answers(line -> ++asked[0] == 1 ? "" : ScriptedInstrument.IDENTITY + "\n");
    Link link = link(LINE, LinkSettings.USUAL.proof());
    link.resynchronise(3_000 * MILLI);
    assertTrue(link.inStep());
    assertEquals(2, asked[0]);
  }

  @Test
  void anInstrumentThatAnswersNothingEndsInTime() {
    instrument.hideIdentity();
    for (BytePort.Traits traits : new BytePort.Traits[] {LINE, USB}) {
      Link link = link(traits, MARKER);
      long before = wire.clock().nanos();
      assertThrows(LinkTimeoutException.class, () -> link.resynchronise(3_000 * MILLI));
      assertTrue(wire.clock().nanos() - before <= 3_000 * MILLI);
    }
  }

  @Test
  void aUsbDeviceIsReadOnlyWhenAReplyIsDue() throws Exception {
    instrument.hideIdentity();
    instrument.answers(line -> line.equals("*IDN?") ? ScriptedInstrument.IDENTITY + "\n" : "1\n");
    Link link = link(USB, LinkSettings.USUAL.proof());
    link.resynchronise(3_000 * MILLI);
    wire.port().deliver("not read\n", 0);
    link.send("VOLT 1", 100 * MILLI);
    // a port that looked for bytes nobody asked for would have found them
    assertTrue(link.inStep());
  }

  @Test
  void lateRepliesOfAUsbDeviceAreReadPast() throws Exception {
    instrument.hideIdentity();
    int[] silent = {0};
    instrument.answers(
        line ->
            line.equals("*IDN?")
                ? ScriptedInstrument.IDENTITY + "\n"
                : silent[0]++ == 0 ? "" : "2.22\n");
    Link link = link(USB, LinkSettings.USUAL.proof());
    link.resynchronise(3_000 * MILLI);
    assertThrows(LinkTimeoutException.class, () -> link.exchange("VOLT?", 50 * MILLI));
    wire.port().deliver("11.11\n", 0);
    link.resynchronise(3_000 * MILLI);
    assertEquals("2.22", link.exchange("CURR?", 100 * MILLI));
  }

  @Test
  void aMessageSentInPartMustNotBeCompletedByTheNext() throws Exception {
    instrument.answers(line -> line.endsWith("?") ? "1\n" : "");
    wire = new MemoryWire(instrument, LINE);
    BytePort halving = new HalvingPort(wire.port());
    Link link = new PortLink(halving, LinkSettings.USUAL, wire.clock(), Transcript.NONE);
    link.resynchronise(3_000 * MILLI);
    HalvingPort.class.cast(halving).halveNext();
    assertThrows(LinkTimeoutException.class, () -> link.send("VOLT 12.5", 50 * MILLI));
    assertThrows(OutOfStepException.class, () -> link.send("OUTP OFF", 50 * MILLI));
    link.resynchronise(3_000 * MILLI);
    link.send("OUTP OFF", 50 * MILLI);
    List<String> received = instrument.received();
    assertEquals(List.of("*IDN?", "VOLT @", "*IDN?", "OUTP OFF"), received);
  }

  @Test
  void writesThatAreHeldUpEndInTime() throws Exception {
    Link link = link(LINE, LinkSettings.USUAL.proof());
    link.resynchronise(3_000 * MILLI);
    wire.port().holdWrites(true);
    assertThrows(LinkTimeoutException.class, () -> link.send("OUTP OFF", 50 * MILLI));
    wire.port().holdWrites(false);
    // nothing went out, so the same message may be sent again at once
    link.send("OUTP OFF", 50 * MILLI);
    assertTrue(instrument.received().contains("OUTP OFF"));
    assertFalse(link.inStep());
  }

  @Test
  void thePauseBeginsWhenTheLastByteIsThroughASlowLine() throws Exception {
    wire = new MemoryWire(instrument, new BytePort.Traits(true, false, false, MILLI));
    Link link =
        new PortLink(
            wire.port(), LinkSettings.USUAL.withPause(15 * MILLI), wire.clock(), Transcript.NONE);
    link.resynchronise(1_000 * MILLI);
    link.send("OUTP OFF", 100 * MILLI);
    long first = wire.clock().nanos();
    link.send("VOLT 0", 100 * MILLI);
    assertEquals(9 * MILLI + 15 * MILLI, wire.clock().nanos() - first);
  }
}
