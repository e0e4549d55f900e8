package railglow.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.zip.ZipFile;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import railglow.casebook.Catalogue;
import railglow.casebook.RunSearch;
import railglow.casebook.RunSummary;
import railglow.journal.Checksums;
import railglow.journal.FindingsFile;
import railglow.journal.JournalText;
import railglow.journal.NpyFile;
import railglow.journal.RunFolder;
import railglow.journal.SampleRun;
import railglow.thermal.Plane;

/** The commands that hand runs on and find them again, as a user types them. */
class EvidenceCommandsTest {
  private static final String NAME = "2026-03-01-hx12-3V3-01";

  @TempDir Path folder;
  private RunFolder run;

  private final Typed typed = Typed.apart();

  private int railglow(String... words) {
    return typed.run(words);
  }

  private String said() {
    return typed.answers();
  }

  private String complained() {
    return typed.complaints();
  }

  private String runs() {
    return folder.resolve("runs").toString();
  }

  @BeforeEach
  void aRun() throws IOException {
    run = new RunFolder(folder.resolve("runs").resolve(NAME));
    Files.createDirectories(run.used());
    Files.writeString(run.used().resolve("hunt.yaml"), "# as it was\n");
    JournalText.write(run.journal(), SampleRun.header(), SampleRun.entries());
    FindingsFile.write(run.findings(), SampleRun.findings());
    for (String plane : List.of("in-phase", "quadrature", "significance", "background")) {
      NpyFile.write(run.plane(plane), new Plane(32, 24));
    }
    Files.write(run.frames(), new byte[3 << 20]);
    Checksums.write(run);
  }

  @Test
  void aRunIsFoundByPartAndWordsAndNotByOthers() {
    assertEquals(0, railglow("runs", "--runs", runs(), "--part", "C37", "lift"), complained());
    assertTrue(said().contains(NAME) && said().contains("Heat found at C37 on 3V3."), said());
    assertEquals(0, railglow("runs", "--runs", runs(), "--part", "R7"), complained());
    assertTrue(said().contains("No run fits."), said());
    assertEquals(0, railglow("runs", "--runs", runs(), "--faults", "--board", "hx-12"));
    assertTrue(said().contains("3V3  C37  1 of 1"), said());
  }

  @Test
  void aRunThatEndedIsInTheCatalogueAtOnce() throws Exception {
    Terminal terminal = new Terminal(System.out, System.err, false);
    CatalogueAt.take(run, run.root().getParent(), terminal);
    try (Catalogue catalogue = Catalogue.besideRuns(run.root().getParent())) {
      assertEquals(
          List.of(NAME), catalogue.find(RunSearch.ALL).stream().map(RunSummary::runId).toList());
    }
  }

  @Test
  void aCatalogueThatCanNotBeUsedIsSaidAndFailsNoRun() throws IOException {
    Files.write(run.root().resolveSibling(".catalogue.mv.db"), new byte[5000]);
    CatalogueAt.take(run, run.root().getParent(), typed.terminal());
    assertTrue(complained().startsWith("The run is not in the catalogue yet: "), complained());
    assertTrue(complained().contains("takes it in later"), complained());
  }

  @Test
  void aCaseBringsItsReadingsBeforeAndAfterAndItsVerdictIntoTheOwnersReport() throws Exception {
    String visit = folder.resolve("case").toString();
    assertEquals(
        0,
        railglow("rails", "--board", "hx12", "--case", visit, "3V3=6.8 ohm", "1V8=130 ohm"),
        complained());
    assertEquals(
        0,
        railglow(
            "rails",
            "--board",
            "hx12",
            "--case",
            visit,
            "3V3=52.4 ohm",
            "--verdict",
            "replace-part",
            "--rail",
            "3V3",
            "--part",
            "C37"),
        complained());
    assertEquals(
        0, railglow("export", "--pdf-only", "--case", visit, run.root().toString()), complained());
    String text;
    try (var pdf = org.apache.pdfbox.Loader.loadPDF(run.root().resolve("owner.pdf").toFile())) {
      text = new org.apache.pdfbox.text.PDFTextStripper().getText(pdf).replaceAll("\\s+", " ");
    }
    assertTrue(text.contains("3V3 6.8 ohm"), text);
    assertTrue(text.contains("52.4 ohm"), text);
    assertTrue(text.contains("C37 is the fault and is to be replaced."), text);
    assertEquals(
        2,
        railglow("export", "--case", visit, "--after", "47 ohm", run.root().toString()),
        "which of the two is it?");
  }

  @Test
  void aFlippedBitIsNamedAndChangesTheExitCode() throws IOException {
    assertEquals(0, railglow("runs", "--runs", runs(), "--check"), said());
    assertTrue(said().contains("Every stored file is as it was."), said());
    byte[] bytes = Files.readAllBytes(run.frames());
    bytes[1_234_567] ^= 1;
    Files.write(run.frames(), bytes);
    assertEquals(1, railglow("runs", "--runs", runs(), "--check"), said());
    assertTrue(said().contains("frames.rgf was changed after the run"), said());
  }

  @Test
  void framesAreDroppedOnlyWithALastDay() {
    assertEquals(2, railglow("runs", "--runs", runs(), "--drop-frames"));
    assertTrue(complained().contains("--until"), complained());
    assertEquals(0, railglow("runs", "--runs", runs(), "--drop-frames", "--until", "2026-02-01"));
    assertTrue(Files.exists(run.frames()), "a later run");
    assertEquals(0, railglow("runs", "--runs", runs(), "--drop-frames", "--until", "2026-03-02"));
    assertTrue(said().contains("Frames dropped: 3 MB freed."), said());
    assertFalse(Files.exists(run.frames()));
    assertEquals(0, railglow("runs", "--runs", runs(), "--check"), said());
  }

  @Test
  void aPlaceWithoutRunsIsASentence() {
    assertEquals(2, railglow("runs", "--runs", folder.resolve("none").toString()));
    assertTrue(complained().contains("there are no runs in"), complained());
  }

  @Test
  void exportingGivesBothPdfsAndAZipOfEverything() throws IOException {
    Path zip = folder.resolve("out.zip");
    assertEquals(
        0,
        railglow("export", run.root().toString(), "--to", zip.toString(), "--after", "47 ohm"),
        complained());
    assertTrue(Files.size(run.root().resolve("owner.pdf")) > 1000);
    try (ZipFile archive = new ZipFile(zip.toFile())) {
      for (String name :
          List.of(
              "journal.jsonl", "frames.rgf", "report.pdf", "planes/in-phase.tif", "SHA256SUMS")) {
        assertTrue(archive.getEntry(NAME + "/" + name) != null, name);
      }
    }
    assertEquals(2, railglow("export", run.root().toString(), "--after", "47"));
    assertTrue(complained().contains("has no unit"), complained());
  }

  @Test
  void aGoodRunIsKeptOnce() {
    String library = folder.resolve("good").toString();
    assertEquals(0, railglow("keep", run.root().toString(), "--library", library), complained());
    assertTrue(said().contains("3V3"), said());
    assertEquals(2, railglow("keep", run.root().toString(), "--library", library));
    assertTrue(complained().contains("this run is kept"), complained());
  }
}
