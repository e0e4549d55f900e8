package railglow.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import railglow.journal.RunFolder;

/** A run of the first format, kept for ever, goes through every command that reads runs. */
class GoldenRunCommandsTest {
  private static final String NAME = "2026-03-01-hx12-3V3-01";
  @TempDir Path folder;
  private RunFolder run;
  private final Typed typed = Typed.together();

  private int railglow(String... words) {
    return typed.run(words);
  }

  private String text() {
    return typed.answers();
  }

  @BeforeEach
  void aCopy() throws Exception {
    Path golden =
        Path.of(GoldenRunCommandsTest.class.getResource("/golden/format-1/journal.jsonl").toURI())
            .getParent();
    run = new RunFolder(folder.resolve("runs").resolve(NAME));
    try (var files = Files.walk(golden)) {
      for (Path file : files.filter(Files::isRegularFile).toList()) {
        Path copy = run.root().resolve(golden.relativize(file).toString());
        Files.createDirectories(copy.getParent());
        Files.copy(file, copy);
      }
    }
  }

  @Test
  void itIsReportedExportedAndFound() throws IOException {
    assertEquals(0, railglow("report", run.root().toString()), text());
    assertTrue(Files.readString(run.report()).contains("Heat found at C37 on 3V3."));
    assertEquals(0, railglow("export", run.root().toString()), text());
    assertTrue(Files.size(run.root().resolve("owner.pdf")) > 1000);
    assertTrue(Files.size(run.root().resolveSibling(NAME + ".zip")) > 1000);
    assertEquals(0, railglow("runs", "--runs", run.root().getParent().toString()), text());
    assertTrue(text().contains("Heat found at C37 on 3V3."), text());
  }

  @Test
  void itsFramesAreReplayedAndComparedWithItsFindings() {
    // its findings were written by hand, so a replay must find them different, and say so
    assertEquals(1, railglow("replay", "--verify", run.root().toString()), text());
    assertTrue(text().contains("the findings or the files are not the same"), text());
    assertTrue(text().contains("headline"), text());
  }

  @Test
  void anyOfItsFramesIsOpened() {
    assertEquals(2, railglowFrame("#99"), text());
    assertTrue(text().contains("there is no frame 99 in the record; it holds"), text());
    assertEquals(0, railglowFrame("#1"), text());
    assertTrue(Files.exists(run.root().resolve("frames/frame-000001.tif")));
  }

  private int railglowFrame(String which) {
    return railglow("export", "--frame", which, run.root().toString());
  }

  @Test
  void theSameRunSaidToBeNewerIsRefusedWithAClearWord() throws IOException {
    String journal = Files.readString(run.journal());
    Files.writeString(
        run.journal(), journal.replaceFirst("\"formatVersion\":1,", "\"formatVersion\":3,"));
    for (String command : new String[] {"report", "export", "replay"}) {
      assertTrue(railglow(command, run.root().toString()) != 0, command);
      assertTrue(text().contains("written in run folder format 3"), command + ": " + text());
      assertTrue(text().contains("use a newer Railglow"), command + ": " + text());
    }
  }
}
