package railglow.journal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Damage of any size is reported in memory of bounded size. */
class HugeDamageTest {
  @TempDir Path folder;

  private Journal withBetween(byte[] junk) throws Exception {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    out.write(JournalLine.of(0, SampleRun.header()));
    out.write(junk);
    out.write('\n');
    out.write(JournalLine.of(1, SampleRun.entries().get(0)));
    return JournalReader.read(Files.write(folder.resolve("journal.jsonl"), out.toByteArray()));
  }

  @Test
  void aLineLongerThanAnyEntryIsLeftOutAndTheNextIsRead() throws Exception {
    Journal journal = withBetween("x".repeat((16 << 20) + 5).getBytes());
    assertEquals(1, journal.entries().size());
    assertEquals(1, journal.damages().size());
    assertTrue(journal.damages().get(0).what().contains("16777221 bytes long"));
  }

  @Test
  void damageThatNoOneReadsIsNotListedToTheEnd() throws Exception {
    Journal journal = withBetween("\n".repeat(20_000).getBytes());
    assertEquals(1, journal.entries().size());
    assertEquals(10_001, journal.damages().size());
    assertTrue(journal.damages().get(10_000).what().contains("more damage"));
  }
}
