package railglow.casebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a catalogue must do on any database. */
abstract class CatalogueContract {
  static final int COUNT = 60;
  @TempDir Path temporary;
  private RunFolders runs;
  private Catalogue catalogue;

  /** A connection of its own to the same, at first empty, database. */
  abstract Catalogue open(Path place) throws Exception;

  /** Empties a database that outlives a test. */
  void empty() throws Exception {}

  @BeforeEach
  void generatedRuns() throws Exception {
    runs = new RunFolders(temporary.resolve("runs"));
    GeneratedRuns.write(runs.root(), COUNT);
    empty();
    catalogue = open(temporary);
  }

  @AfterEach
  void close() throws Exception {
    catalogue.close();
  }

  private static RunSearch search(
      String board, String rail, String part, String verdict, List<String> words) {
    return new RunSearch(board, rail, part, verdict, null, null, words, 1000);
  }

  private List<RunSummary> direct() throws IOException {
    List<RunSummary> all = new ArrayList<>();
    for (var folder : runs.list()) {
      all.add(RunSummary.of(folder));
    }
    return all;
  }

  @Test
  void everyRunOfTheFoldersIsFoundAgainWithEverythingThatWasKept() throws Exception {
    List<Integer> progress = new ArrayList<>();
    assertEquals(List.of(), catalogue.refresh(runs, false, progress::add));
    assertEquals(COUNT, progress.get(progress.size() - 1));
    List<RunSummary> found = new ArrayList<>(catalogue.find(search("", "", "", "", List.of())));
    found.sort((a, b) -> a.started().compareTo(b.started()));
    assertEquals(direct(), found);
  }

  @Test
  void searchesGiveExactlyTheRunsThatFit() throws Exception {
    catalogue.refresh(runs, false, done -> {});
    List<RunSummary> all = direct();
    assertEquals(
        all.stream().filter(r -> r.board().startsWith("KX-4")).count(),
        catalogue.find(search("kx-4", "", "", "", List.of())).size());
    assertEquals(
        all.stream().filter(r -> r.rail().equals("3V3") && r.suspects().contains("C37")).count(),
        catalogue.find(search("", "3v3", "c37", "", List.of())).size());
    assertEquals(
        all.stream().filter(r -> r.verdict().equals("NOTHING_FOUND")).count(),
        catalogue.find(search("", "", "", "NOTHING_FOUND", List.of())).size());
    assertEquals(
        all.stream().filter(r -> r.text().contains("pump") && r.text().contains("c41")).count(),
        catalogue.find(search("", "", "", "", List.of("PUMP", "C41"))).size());
    Instant day = Instant.parse("2024-01-02T00:00:00Z");
    Instant next = Instant.parse("2024-01-03T00:00:00Z");
    List<RunSummary> ofADay =
        catalogue.find(new RunSearch("", "", "", "", day, next, List.of(), 1000));
    assertEquals(24, ofADay.size());
    assertTrue(ofADay.get(0).started().isAfter(ofADay.get(23).started()), "newest first");
    assertEquals(3, catalogue.find(new RunSearch("", "", "", "", null, null, List.of(), 3)).size());
  }

  @Test
  void charactersOfTheQueryLanguageAreJustCharacters() throws Exception {
    catalogue.refresh(runs, false, done -> {});
    for (String odd : List.of("%", "_", "'", "!", "'; DROP TABLE runs; --", "\\")) {
      assertEquals(
          direct().stream().filter(r -> r.board().contains(odd)).count(),
          catalogue.find(search(odd, "", "", "", List.of())).size(),
          odd);
    }
  }

  @Test
  void faultsAreCountedByRail() throws Exception {
    catalogue.refresh(runs, false, done -> {});
    List<FaultCount> faults = catalogue.faults("HX-12");
    for (FaultCount fault : faults) {
      List<RunSummary> ofRail =
          direct().stream()
              .filter(r -> r.board().startsWith("HX-12"))
              .filter(r -> r.rail().equals(fault.rail()) && r.verdict().equals("HEAT_FOUND"))
              .toList();
      assertEquals(ofRail.size(), fault.all());
      assertEquals(
          ofRail.stream().filter(r -> r.suspects().get(0).equals(fault.part())).count(),
          fault.count());
    }
    assertTrue(faults.size() > 10);
  }

  @Test
  void aRefreshTakesInWhatIsNewAndForgetsWhatIsGone() throws Exception {
    catalogue.refresh(runs, false, done -> {});
    Path gone = runs.root().resolve("run-00003");
    Files.delete(gone.resolve("findings.json"));
    catalogue.refresh(runs, false, done -> {});
    assertEquals(1, catalogue.find(search("", "", "", "NO_FINDINGS", List.of())).size());
    Files.delete(gone.resolve("journal.jsonl"));
    Files.delete(gone);
    catalogue.refresh(runs, false, done -> {});
    assertEquals(COUNT - 1, catalogue.find(search("", "", "", "", List.of())).size());
  }

  @Test
  void aFolderThatCanNotBeReadIsNamedAndTheRestIsKept() throws Exception {
    Files.writeString(runs.root().resolve("run-00004").resolve("journal.jsonl"), "{\"n\":0");
    var damages = catalogue.refresh(runs, false, done -> {});
    assertEquals("run-00004", damages.get(0).file());
    assertEquals(COUNT - 1, catalogue.find(search("", "", "", "", List.of())).size());
  }

  @Test
  void benchesThatWriteAtOnceLoseNothing() throws Exception {
    List<RunSummary> all = direct();
    ExecutorService benches = Executors.newFixedThreadPool(4);
    try {
      List<Callable<Void>> tasks = new ArrayList<>();
      for (int bench = 0; bench < 4; bench++) {
        int first = bench;
        tasks.add(
            () -> {
              try (Catalogue own = open(temporary)) {
                for (int i = first; i < all.size(); i += 4) {
                  own.put(all.get(i));
                }
              }
              return null;
            });
      }
      for (var done : benches.invokeAll(tasks)) {
        done.get();
      }
    } finally {
      benches.shutdownNow();
    }
    assertEquals(COUNT, catalogue.find(search("", "", "", "", List.of())).size());
  }
}
