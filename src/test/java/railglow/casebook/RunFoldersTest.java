package railglow.casebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import railglow.journal.JournalException;
import railglow.journal.RunFolder;

class RunFoldersTest {
  private static final LocalDate DAY = LocalDate.of(2026, 3, 1);
  @TempDir Path temporary;

  @Test
  void foldersAreNamedByDateBoardRailAndNumber() throws IOException {
    RunFolders runs = new RunFolders(temporary.resolve("runs"));
    assertEquals("2026-03-01-HX_12-3V3-01", runs.create(DAY, "HX-12", "3V3").name());
    assertEquals("2026-03-01-HX_12-3V3-02", runs.create(DAY, "HX-12", "3V3").name());
    assertEquals("2026-03-01-HX_12-1V8-01", runs.create(DAY, "HX-12", "1V8").name());
    assertEquals("2026-03-01-board-rail-01", runs.create(DAY, "", "//").name());
  }

  @Test
  void namesCanNotLeaveTheFolder() {
    assertEquals("etc_passwd", RunFolders.word("../../etc/passwd", "x"));
    assertEquals("Gewachshaus_Steuerung", RunFolders.word("Gewächshaus Steuerung", "x"));
    assertEquals(24, RunFolders.word("a".repeat(300), "x").length());
  }

  @Test
  void manyBenchesAtOnceGetAFolderEach() throws Exception {
    RunFolders runs = new RunFolders(temporary.resolve("runs"));
    Set<Path> made = ConcurrentHashMap.newKeySet();
    ExecutorService benches = Executors.newFixedThreadPool(8);
    try {
      List<Callable<Boolean>> tasks = new ArrayList<>();
      for (int i = 0; i < 64; i++) {
        tasks.add(() -> made.add(runs.create(DAY, "HX-12", "3V3").root()));
      }
      for (var result : benches.invokeAll(tasks)) {
        assertTrue(result.get(), "two benches got the same folder");
      }
    } finally {
      benches.shutdownNow();
    }
    assertEquals(64, made.size());
  }

  @Test
  void onlyFoldersWithAJournalAreRuns() throws IOException {
    RunFolders runs = new RunFolders(temporary.resolve("runs"));
    assertEquals(List.of(), runs.list());
    RunFolder run = runs.create(DAY, "HX-12", "3V3");
    runs.create(DAY, "HX-12", "3V3");
    Files.createFile(run.journal());
    assertEquals(List.of(run), runs.list());
    RunFolder ladder = new RunFolders(runs.root().resolve("ladders")).create(DAY, "HX-12", "3V3");
    Files.createFile(ladder.journal());
    assertEquals(List.of(run, ladder), runs.list());
  }

  @Test
  void aPlaceThatIsAFileIsRefusedWithASentence() throws IOException {
    Path file = Files.createFile(temporary.resolve("runs"));
    JournalException e =
        assertThrows(
            JournalException.class, () -> new RunFolders(file).create(DAY, "HX-12", "3V3"));
    assertTrue(e.getMessage().contains("choose another folder"), e.getMessage());
  }
}
