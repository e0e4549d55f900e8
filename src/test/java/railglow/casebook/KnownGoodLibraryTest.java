package railglow.casebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import railglow.journal.Checksums;
import railglow.journal.FindingsFile;
import railglow.journal.JournalException;
import railglow.journal.JournalReader;
import railglow.journal.NpyFile;
import railglow.journal.RunFolder;
import railglow.thermal.Plane;

class KnownGoodLibraryTest {
  @TempDir Path temporary;
  private RunFolder run;
  private KnownGoodLibrary library;

  @BeforeEach
  void aRun() throws IOException {
    GeneratedRuns.write(temporary.resolve("runs"), 2);
    run = new RunFolder(temporary.resolve("runs").resolve("run-00001"));
    Files.write(run.frames(), new byte[5000]);
    for (String plane : List.of("in-phase", "quadrature", "significance", "background")) {
      NpyFile.write(run.plane(plane), new Plane(3, 2));
    }
    Checksums.write(run);
    library = new KnownGoodLibrary(temporary.resolve("known-good"));
  }

  @Test
  void aKeptRunCanBeReadWithoutItsFrames() throws IOException {
    RunFolder kept = library.keep(run);
    String board = JournalReader.read(run).header().board();
    String rail = JournalReader.read(run).header().rail();
    assertEquals(List.of(kept), library.runs(board, rail));
    assertEquals(List.of(), library.runs(board, "another rail"));
    assertEquals(FindingsFile.read(run.findings()), FindingsFile.read(kept.findings()));
    assertFalse(Files.exists(kept.frames()));
    assertEquals(List.of(), Checksums.check(kept));
  }

  @Test
  void aRunIsKeptOnce() throws IOException {
    library.keep(run);
    JournalException e = assertThrows(JournalException.class, () -> library.keep(run));
    assertTrue(e.getMessage().contains("is there already"), e.getMessage());
  }

  @Test
  void onlyWholeRunsAreKept() throws IOException {
    Files.delete(run.findings());
    assertThrows(JournalException.class, () -> library.keep(run));
  }

  @Test
  void readingsAreKeptByBoard() throws IOException {
    Path table = Files.writeString(temporary.resolve("good-1.csv"), "rail,ohms\n");
    Path kept = library.keepReadings("HX-12", table);
    assertEquals(List.of(kept), library.readings("HX-12"));
    assertThrows(JournalException.class, () -> library.keepReadings("HX-12", table));
    assertEquals(List.of(), library.readings("KX-4"));
  }

  @Test
  void framesGoOnlyWhenEverythingReducedIsThere() throws IOException {
    Files.delete(run.plane("significance"));
    assertTrue(Retention.reasonToKeep(run).orElseThrow().contains("significance"));
    assertThrows(IllegalArgumentException.class, () -> Retention.dropFrames(run, "test"));
    assertTrue(Files.exists(run.frames()));
  }

  @Test
  void droppedFramesAreNoDamageButChangedOnesAre() throws IOException {
    assertEquals(Optional.empty(), Retention.reasonToKeep(run));
    assertEquals(5000, Retention.dropFrames(run, "older than a year"));
    assertFalse(Files.exists(run.frames()));
    assertEquals(List.of(), Checksums.check(run));
    assertEquals(Optional.of("it has no frames"), Retention.reasonToKeep(run));
    Files.write(run.plane("in-phase"), new byte[3]);
    assertEquals("planes/in-phase.npy", Checksums.check(run).get(0).file());
  }

  @Test
  void framesThatAreGoneWithoutANoteAreDamage() throws IOException {
    Files.delete(run.frames());
    assertEquals("frames.rgf", Checksums.check(run).get(0).file());
  }
}
