package railglow.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static railglow.cli.Typed.railglow;

import java.nio.file.Files;
import java.nio.file.Path;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import railglow.board.HeatPath;
import railglow.journal.Findings;
import railglow.journal.FindingsFile;

/** What is entered for a run, from the command line to findings and report, and corrected later. */
class EnteredIT {
  @TempDir Path runs;

  private Path run() throws Exception {
    try (var files = Files.list(runs)) {
      return files
          .filter(file -> Files.exists(file.resolve("findings.json")))
          .findFirst()
          .orElseThrow();
    }
  }

  private Findings findings() throws Exception {
    return FindingsFile.read(run().resolve("findings.json"));
  }

  @Test
  void aClipAndAReflectedTemperatureCountInTheRunAndAreCorrectedByAReplay() throws Exception {
    String hunted =
        railglow(
            0,
            "hunt",
            "--simulated",
            "--clip",
            "C37.1",
            "--reflected",
            "31 degC",
            "--reflected-error",
            "1 K",
            "--runs",
            runs.toString());
    assertTrue(hunted.contains("Found Heat where the clip on C37 pin 1 sits"), hunted);
    assertTrue(hunted.contains("clip on at another point of 3V3 and compare"), hunted);
    assertTrue(hunted.contains("mirrors 31 degC +- 1 K, entered"), hunted);
    assertEquals(HeatPath.Kind.CLIP, findings().lead().path().orElseThrow().kind());
    assertEquals(31, findings().trueRises().get(0).reflectedCelsius());
    String report = Files.readString(run().resolve("report.html"));
    assertTrue(report.contains("Heat where the clip on C37 pin 1 sits"), report);
    assertTrue(report.contains("most likely its contact"), report);
    String folder = run().toString();
    railglow(0, "export", folder, "--pdf-only");
    try (PDDocument owner = Loader.loadPDF(run().resolve("owner.pdf").toFile())) {
      assertEquals(1, owner.getNumberOfPages());
      String page = new PDFTextStripper().getText(owner).replaceAll("\\s+", " ");
      assertTrue(page.contains("So far only the way of the current on the supply line 3V3"), page);
    }
    railglow(0, "replay", folder, "--verify");

    assertTrue(railglow(2, "replay", folder, "--verify", "--clip", "C9").contains("leave --clip"));
    assertTrue(
        railglow(2, "replay", folder, "--reflected", "-80 degC").contains("allowed is -50 degC"));
    railglow(0, "replay", folder, "--verify");

    String corrected = railglow(0, "replay", folder, "--clip", "C9");
    assertTrue(corrected.contains("Found Heat at C37"), corrected);
    assertTrue(corrected.contains("mirrors 31 degC +- 1 K, entered"), corrected);
    assertFalse(corrected.contains("clip"), corrected);
    railglow(0, "replay", folder, "--verify");
    railglow(0, "replay", folder, "--reflected", "20 degC");
    assertEquals(20, findings().trueRises().get(0).reflectedCelsius());
    railglow(0, "replay", folder, "--verify");
  }
}
