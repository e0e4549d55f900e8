package railglow.casebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A catalogue of 10 000 runs; prints its times. Run with mvn -Pslow test -Dtest=CatalogueScaleTest.
 */
@Tag("slow")
class CatalogueScaleTest {
  private static final int COUNT = 10_000;
  @TempDir Path temporary;

  @Test
  void searchesOfTenThousandRunsTakeLessThanATenthOfASecond() throws Exception {
    RunFolders runs = new RunFolders(temporary.resolve("runs"));
    GeneratedRuns.write(runs.root(), COUNT);
    try (Catalogue catalogue = Catalogue.besideRuns(runs.root())) {
      long start = System.nanoTime();
      int[] steps = {0};
      assertEquals(List.of(), catalogue.refresh(runs, false, done -> steps[0]++));
      assertEquals(COUNT, steps[0]);
      print("built from the folders", System.nanoTime() - start);
      start = System.nanoTime();
      catalogue.refresh(runs, false, done -> {});
      print("brought up to date when nothing changed", System.nanoTime() - start);
      time(
          catalogue,
          "by board and rail",
          new RunSearch("hx-12", "3V3", "", "", null, null, List.of(), 50));
      time(catalogue, "by part", new RunSearch("", "", "C37", "", null, null, List.of(), 50));
      time(
          catalogue,
          "by two words",
          new RunSearch("", "", "", "", null, null, List.of("pump", "c41"), 50));
      time(
          catalogue,
          "a word that is nowhere",
          new RunSearch("", "", "", "", null, null, List.of("zebra"), 50));
      start = System.nanoTime();
      assertTrue(catalogue.faults("HX-12").size() > 10);
      print("faults of a board", System.nanoTime() - start);
    }
  }

  private static void time(Catalogue catalogue, String name, RunSearch search) throws Exception {
    long best = Long.MAX_VALUE;
    int found = 0;
    for (int i = 0; i < 3; i++) {
      long start = System.nanoTime();
      found = catalogue.find(search).size();
      best = Math.min(best, System.nanoTime() - start);
    }
    print("search " + name + ", " + found + " found", best);
    assertTrue(best < 100_000_000L, name + " took " + best / 1_000_000 + " ms");
  }

  private static void print(String what, long nanos) {
    System.out.printf("%-50s %8.1f ms%n", what, nanos / 1e6);
  }
}
