package railglow.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import railglow.casebook.Catalogue;
import railglow.casebook.RunSearch;
import railglow.journal.Entry;
import railglow.journal.Journal;
import railglow.journal.JournalReader;
import railglow.journal.NpyFile;
import railglow.journal.RunFolder;
import railglow.observed.Edge;

/** Logs over real sockets against the simulated bench, and what is done with them afterwards. */
class LogIT {
  @TempDir Path runs;
  private final Typed typed = Typed.together();

  private int railglow(String... words) {
    return typed.run(words);
  }

  private int log(String... options) {
    List<String> words = new ArrayList<>(List.of("log", "--simulated", "--runs", runs.toString()));
    words.addAll(List.of(options));
    return railglow(words.toArray(new String[0]));
  }

  private String text() {
    return typed.onOneLine();
  }

  private RunFolder run() throws IOException {
    try (var folders = Files.list(runs)) {
      return new RunFolder(
          folders.filter(folder -> Files.isDirectory(folder)).findFirst().orElseThrow());
    }
  }

  @Test
  void aSteadyInjectionIsRecordedWithPlacesAndMarksAndVerifiedAndOpened() throws Exception {
    int exit =
        log(
            "--level",
            "1 V",
            "--current-limit",
            "300 mA",
            "--lead-in",
            "1 s",
            "--duration",
            "3 s",
            "--place",
            "C37",
            "--place",
            "corner=area 4 px, 4 px, 20 px, 20 px",
            "--mark-on",
            "current step 50 mA");
    assertEquals(0, exit, text());
    assertTrue(text().contains("the time was over, 3.0 s; output proven off"), text());
    RunFolder run = run();
    Journal journal = JournalReader.read(run);
    assertEquals(2, journal.header().formatVersion());
    assertTrue(journal.finished());
    List<Entry.Followed> followed = journal.of(Entry.Followed.class).toList();
    assertTrue(followed.size() > 40, followed.size() + " frames");
    double warmest = followed.get(followed.size() - 1).riseMean()[0];
    double elsewhere = followed.get(followed.size() - 1).riseMean()[1];
    assertTrue(warmest > 0.1 && Math.abs(elsewhere) < 0.1, warmest + " K and " + elsewhere + " K");

    // one time base: the step is seen in the current where the edge was made
    Edge on = journal.of(Entry.EdgeMade.class).findFirst().orElseThrow().edge();
    Entry.Marker step = journal.of(Entry.Marker.class).findFirst().orElseThrow();
    assertTrue(step.text().startsWith("current step 50 mA: from "), step.text());
    assertTrue(step.nanos() >= on.commandedNanos(), "not before it was commanded");
    Entry.Aligned aligned = journal.of(Entry.Aligned.class).findFirst().orElseThrow();
    assertTrue(aligned.readingSeconds() > 0 && aligned.frameSeconds() >= 0, aligned.toString());

    String report = Files.readString(run.report());
    assertTrue(report.contains("A steady injection of 1 V"), "report");
    assertTrue(report.contains("C37, °C: mean, lowest and highest pixel"), "report");
    try (Catalogue catalogue = Catalogue.besideRuns(runs)) {
      assertEquals("LOG", catalogue.find(RunSearch.ALL).get(0).verdict());
    }

    assertEquals(0, railglow("replay", "--verify", run.root().toString()), text());
    assertTrue(text().contains("the same, bit for bit"), text());
    long number = followed.get(30).frame();
    assertEquals(0, railglow("export", "--frame", "#" + number, run.root().toString()), text());
    Path npy = run.root().resolve(String.format("frames/frame-%06d.npy", number));
    // the corner's mean from the exported picture is the one in the journal
    double sum = 0;
    for (int row = 4; row <= 20; row++) {
      for (int column = 4; column <= 20; column++) {
        sum += NpyFile.read(npy).at(column, row);
      }
    }
    assertEquals(followed.get(30).mean()[1], sum / 289, 1e-3);
    assertEquals(0, railglow("export", "--place", "U10", run.root().toString()), text());
    List<String> added = Files.readAllLines(run.root().resolve("places-added.csv"));
    assertEquals(followed.size() + 1, added.size());
    assertTrue(added.get(0).endsWith("U10 highest rise_K"), added.get(0));
    assertEquals(0, railglow("export", run.root().toString()), text());
    assertTrue(Files.size(run.root().resolve("report.pdf")) > 10_000);

    byte[] frames = Files.readAllBytes(run.frames());
    frames[frames.length / 2] ^= 4;
    Files.write(run.frames(), frames);
    assertEquals(1, railglow("replay", "--verify", run.root().toString()), text());
    assertTrue(text().contains("was changed after the run"), text());
  }

  @Test
  void aSupplyOfSomebodyElseIsOnlyAsked() throws Exception {
    assertEquals(0, log("--watch-supply", "--lead-in", "500 ms", "--duration", "1 s"), text());
    assertFalse(text().contains("PROVEN"), text());
    RunFolder run = run();
    assertTrue(JournalReader.read(run).of(Entry.Reading.class).count() > 2);
    for (String line : Files.readAllLines(run.transcript())) {
      if (line.contains(" > ")) {
        String sent = line.substring(line.indexOf(" > ") + 3).replaceAll("[\"'\\s]", "");
        for (String part : sent.replaceAll("(\\\\r|\\\\n)+$", "").split(";")) {
          assertTrue(
              part.isEmpty()
                  || part.endsWith("?")
                  || part.contains("INST")
                  || part.contains("NSEL"),
              "only questions are sent, not '" + line + "'");
        }
      }
    }
  }

  @Test
  void framesAreKeptFromBeforeTheStartConditionOn() throws Exception {
    int exit =
        log(
            "--level",
            "1 V",
            "--current-limit",
            "300 mA",
            "--lead-in",
            "2 s",
            "--duration",
            "1 s",
            "--start-on",
            "current step 50 mA",
            "--before",
            "1 s",
            "--wait",
            "10 s");
    assertEquals(0, exit, text());
    Journal journal = JournalReader.read(run());
    Entry.Marker start = journal.of(Entry.Marker.class).findFirst().orElseThrow();
    assertEquals(Entry.Marker.Origin.START, start.origin());
    List<Entry.Followed> followed = journal.of(Entry.Followed.class).toList();
    double before = (start.nanos() - followed.get(0).nanos()) / 1e9;
    assertTrue(before > 0.5 && before < 1.6, before + " s before the start");
    assertEquals(0, railglow("replay", "--verify", run().root().toString()), text());
  }

  @Test
  void aPassedLimitStopsALogWithTheOutputProvenOff() throws Exception {
    int exit =
        log(
            "--level",
            "1 V",
            "--current-limit",
            "300 mA",
            "--lead-in",
            "500 ms",
            "--duration",
            "30 s",
            "--fault",
            "runaway@7s");
    assertEquals(4, exit, text());
    assertTrue(text().contains("output proven off"), text());
    assertTrue(Files.readString(run().report()).contains("The output was proven off."), text());
  }
}
