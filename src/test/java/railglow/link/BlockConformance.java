package railglow.link;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** What every link does with blocks, whatever the wire; and what its tests have in common. */
@Timeout(20)
abstract class BlockConformance {
  static final long MILLI = 1_000_000;

  /** Long enough never to be reached by something that comes. */
  static final long AMPLE = 5_000 * MILLI;

  /** For replies that never come. */
  static final long SHORT = 60 * MILLI;

  final ScriptedInstrument instrument = new ScriptedInstrument();
  TestWire wire;

  abstract TestWire connect(ScriptedInstrument other) throws Exception;

  LinkSettings settings() {
    return LinkSettings.USUAL.withQuiet(40 * MILLI);
  }

  Link open(LinkSettings settings) throws Exception {
    wire = connect(instrument);
    Link link = new PortLink(wire.port(), settings, wire.clock(), Transcript.NONE);
    link.resynchronise(AMPLE);
    return link;
  }

  @AfterEach
  void closeWire() throws Exception {
    if (wire != null) {
      wire.close();
    }
  }

  @Test
  void aBlockMayHoldAnyByte() throws Exception {
    byte[] bytes = new byte[1024];
    for (int i = 0; i < bytes.length; i++) {
      bytes[i] = (byte) i;
    }
    String block = "#41024" + new String(bytes, StandardCharsets.ISO_8859_1) + "\n";
    instrument.answers(line -> line.equals("DATA?") ? block : "1\n");
    Link link = open(settings());
    assertArrayEquals(bytes, link.exchangeBlock("DATA?", 2000, AMPLE));
    assertEquals("1", link.exchange("A?", AMPLE));
    assertThrows(OutOfStepException.class, () -> link.exchangeBlock("DATA?", 1000, AMPLE));
  }

  @Test
  void aBlockOfUntoldLengthEndsWithALineEndAndSilence() throws Exception {
    instrument.answers(line -> line.equals("DATA?") ? "#0ab\ncd\n" : "1\n");
    Link link = open(settings());
    assertArrayEquals("ab\ncd".getBytes(), link.exchangeBlock("DATA?", 100, AMPLE));
    assertEquals("1", link.exchange("A?", AMPLE));
  }

  @Test
  void aReplyThatIsNoBlockIsRefused() throws Exception {
    instrument.answers(line -> "1.0\n");
    Link link = open(settings());
    assertThrows(OutOfStepException.class, () -> link.exchangeBlock("DATA?", 100, AMPLE));
    assertFalse(link.inStep());
  }
}
