package railglow.link;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class TranscriptFileTest {
  @TempDir Path folder;

  @Test
  void eachMessageIsALineWithItsTimeAndDirection() throws Exception {
    Path file = folder.resolve("transcript.txt");
    ScriptedInstrument instrument = new ScriptedInstrument();
    instrument.answers(line -> "1\t\"x\"\u00ff\n");
    MemoryWire wire = new MemoryWire(instrument, new BytePort.Traits(true, false, false));
    try (TranscriptFile transcript = new TranscriptFile(file, wire.clock().nanos())) {
      Link link = new PortLink(wire.port(), LinkSettings.USUAL, wire.clock(), transcript);
      link.resynchronise(1_000_000_000);
      link.exchange("A?", 1_000_000_000);
      transcript.step(0);
      link.send("OUTP OFF", 1_000_000_000);
    }
    assertEquals(
        List.of(
            "0.000000 # \"opened memory\"",
            "0.000000 > \"A?\\n\"",
            "0.001000 < \"1\\x09\\\"x\\\"\\xff\\n\"",
            "0.001000 > \"OUTP OFF\\n\""),
        Files.readAllLines(file));
  }

  @Test
  void aFullBufferDropsAndCountsInsteadOfBlocking() throws Exception {
    Path file = folder.resolve("transcript.txt");
    TranscriptFile transcript = new TranscriptFile(file, 0);
    byte[] bytes = "MEAS:VOLT?\n".getBytes(StandardCharsets.US_ASCII);
    for (int i = 0; i < 5000; i++) {
      transcript.sent(i, bytes, bytes.length);
    }
    assertEquals(5000 - 4096, transcript.linesLost());
    transcript.close();
    List<String> lines = Files.readAllLines(file);
    assertEquals(4097, lines.size());
    assertEquals("# 904 lines lost here", lines.get(4096));
    assertNull(transcript.failure());
  }

  @Test
  void aVeryLongReplyIsShortened() throws Exception {
    Path file = folder.resolve("transcript.txt");
    TranscriptFile transcript = new TranscriptFile(file, 0);
    transcript.received(0, new byte[1000], 1000);
    transcript.close();
    assertTrue(Files.readString(file).endsWith("\" and 744 bytes more\n"));
  }
}
