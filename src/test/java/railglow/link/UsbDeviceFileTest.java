package railglow.link;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import railglow.time.SystemClock;

/** The device file of a USB instrument, played by a pseudo-terminal: reads block as there. */
@Timeout(20)
class UsbDeviceFileTest {
  private static final long MILLI = 1_000_000;
  private static final long AMPLE = 5_000 * MILLI;
  @TempDir Path folder;
  private final ScriptedInstrument instrument = new ScriptedInstrument();
  private PtyWire wire;

  private Link open(LineEnd replyEnd) throws Exception {
    wire = new PtyWire(instrument, folder, device -> Ports.usbtmc(device, SystemClock.INSTANCE));
    Link link =
        new PortLink(
            wire.port(),
            LinkSettings.USUAL.withQuiet(40 * MILLI).withEnds(LineEnd.LF, replyEnd),
            wire.clock(),
            Transcript.NONE);
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
  void questionsAreAnswered() throws Exception {
    instrument.answers(line -> line.endsWith("?") ? "1.5\n" : "");
    Link link = open(LineEnd.LF);
    link.send("VOLT 1.5", AMPLE);
    assertEquals("1.5", link.exchange("VOLT?", AMPLE));
  }

  @Test
  void aReplyMayEndWithItsTransferInsteadOfALineEnd() throws Exception {
    instrument.hideIdentity();
    instrument.answers(line -> line.equals("*IDN?") ? ScriptedInstrument.IDENTITY : "1.5");
    Link link = open(LineEnd.NONE);
    assertEquals("1.5", link.exchange("VOLT?", AMPLE));
    assertEquals("1.5", link.exchange("VOLT?", AMPLE));
  }

  @Test
  void aReadThatBlocksForeverEndsInTimeForItsCaller() throws Exception {
    Link link = open(LineEnd.LF);
    long before = SystemClock.INSTANCE.nanos();
    assertThrows(LinkTimeoutException.class, () -> link.exchange("A?", 60 * MILLI));
    assertTrue(SystemClock.INSTANCE.nanos() - before < 2_000 * MILLI);
    assertFalse(link.inStep());
    wire.sendUnasked("late\n");
    instrument.answers(line -> "right\n");
    link.resynchronise(AMPLE);
    assertEquals("right", link.exchange("B?", AMPLE));
  }

  @Test
  void aBlockIsTakenWhole() throws Exception {
    instrument.answers(line -> "#15a\nb\nc\n");
    Link link = open(LineEnd.LF);
    assertArrayEquals("a\nb\nc".getBytes(), link.exchangeBlock("DATA?", 10, AMPLE));
  }

  @Test
  void aDeviceThatIsUnpluggedIsNoticed() throws Exception {
    Link link = open(LineEnd.LF);
    wire.cut();
    assertThrows(LinkLostException.class, () -> link.exchange("A?", AMPLE));
    CannotOpenException e =
        assertThrows(CannotOpenException.class, () -> link.resynchronise(AMPLE));
    assertEquals(CannotOpenException.Reason.NOT_FOUND, e.reason());
  }
}
