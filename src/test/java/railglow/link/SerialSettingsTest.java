package railglow.link;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import railglow.time.SystemClock;

/** What only a serial line has. */
@Timeout(30)
class SerialSettingsTest {
  private static final long MILLI = 1_000_000;
  @TempDir Path folder;
  private final ScriptedInstrument instrument = new ScriptedInstrument();
  private PtyWire wire;

  private Link open(SerialLine pattern) throws Exception {
    wire =
        new PtyWire(
            instrument,
            folder,
            device ->
                Ports.serial(
                    new SerialLine(
                        device,
                        pattern.baud(),
                        pattern.dataBits(),
                        pattern.parity(),
                        pattern.stopBits(),
                        pattern.flow()),
                    SystemClock.INSTANCE));
    LinkSettings settings = LinkSettings.USUAL.withQuiet(20 * MILLI);
    Link link = new PortLink(wire.port(), settings, SystemClock.INSTANCE, Transcript.NONE);
    link.resynchronise(5_000 * MILLI);
    return link;
  }

  @AfterEach
  void closeWire() throws Exception {
    if (wire != null) {
      wire.signal("CONT");
      wire.close();
    }
  }

  @ParameterizedTest
  // a pseudo-terminal has no parity of its own, so these show that the settings are accepted
  @CsvSource({
    "9600,8,NONE,ONE,NONE",
    "9600,7,EVEN,ONE,NONE",
    "19200,8,ODD,TWO,NONE",
    "115200,8,NONE,ONE,XON_XOFF",
    "2400,8,NONE,TWO,NONE"
  })
  void theUsualLineSettingsOpen(
      int baud,
      int bits,
      SerialLine.Parity parity,
      SerialLine.StopBits stop,
      SerialLine.FlowControl flow)
      throws Exception {
    instrument.answers(line -> "1\n");
    Link link = open(new SerialLine("x", baud, bits, parity, stop, flow));
    assertEquals("1", link.exchange("A?", 5_000 * MILLI));
  }

  @Test
  void aByteTakesItsDataBitsAndThoseAroundThem() {
    SerialLine line =
        new SerialLine(
            "/dev/tty0",
            9600,
            7,
            SerialLine.Parity.EVEN,
            SerialLine.StopBits.TWO,
            SerialLine.FlowControl.NONE);
    assertEquals(1_145_833, line.nanosPerByte(), "11 bits of 104.17 us");
    assertEquals(86_806, SerialLine.usual("/dev/tty0", 115_200).nanosPerByte());
  }

  @Test
  void aLineThatTakesNothingEndsTheSendInTimeAndCanBeOpenedAnew() throws Exception {
    instrument.answers(line -> line.endsWith("?") ? "1\n" : "");
    Link link = open(SerialLine.usual("x", 9600));
    wire.signal("STOP");
    String big = "x".repeat(3000);
    long before = SystemClock.INSTANCE.nanos();
    assertThrows(
        LinkTimeoutException.class,
        () -> {
          for (int i = 0; i < 40; i++) {
            link.send(big, 100 * MILLI);
          }
        });
    assertTrue(SystemClock.INSTANCE.nanos() - before < 10_000 * MILLI);
    assertFalse(link.inStep());
    wire.signal("CONT");
    link.resynchronise(10_000 * MILLI);
    assertEquals("1", link.exchange("A?", 5_000 * MILLI));
  }
}
