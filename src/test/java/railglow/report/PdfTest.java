package railglow.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.TimeUnit;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class PdfTest {
  @TempDir Path temporary;

  /** What poppler's pdftotext, which is not ours, reads. */
  private static String text(Path pdf) throws Exception {
    Process process;
    try {
      process =
          new ProcessBuilder("pdftotext", "-layout", pdf.toString(), "-")
              .redirectErrorStream(true)
              .start();
    } catch (IOException e) {
      assumeTrue(false, "pdftotext is not here");
      return "";
    }
    String text = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertTrue(process.waitFor(30, TimeUnit.SECONDS));
    assertEquals(0, process.exitValue(), text);
    return text;
  }

  private static int pages(Path pdf, float width, float height) throws IOException {
    try (PDDocument document = Loader.loadPDF(pdf.toFile())) {
      var box = document.getPage(0).getMediaBox();
      assertEquals(width, box.getWidth(), 0.5);
      assertEquals(height, box.getHeight(), 0.5);
      return document.getNumberOfPages();
    }
  }

  private Scene scene() throws IOException {
    Scene scene =
        new Scene(temporary.resolve("run \u0007 & <b>"), 64, 48).source(30, 20, 1.6, 0.42).parts();
    scene.write(true);
    return scene;
  }

  private static RunReport.Print print(Paper paper, OhmReading... readings) {
    return new RunReport.Print(paper, Locale.ENGLISH, List.of(readings), "");
  }

  @Test
  void theVerdictOfTheCaseAndItsReadingsAreOnTheOwnersPage() throws Exception {
    Scene scene = new Scene(temporary.resolve("case"), 64, 48).source(30, 20, 1.6, 0.42).parts();
    scene.write(true);
    RunReport.writePdf(
        scene.folder(),
        scene.placement(),
        new RunReport.Print(
            Paper.A4,
            Locale.ENGLISH,
            List.of(
                new OhmReading("3V3", 6.8, "45 ohm or more", 52.2),
                new OhmReading("1V8", 129.8, "60 ohm to 900 ohm", 130.1)),
            "C37 is the fault and is to be replaced. 3V3 now reads 52.2 ohm: confirmed."));
    String text = text(scene.folder().root().resolve("owner.pdf"));
    assertTrue(text.contains("How it ended"), text);
    assertTrue(text.contains("C37 is the fault and is to be replaced."), text);
    assertTrue(text.replaceAll("\\s+", " ").contains("3V3 6.8 ohm 45 ohm or more 52.2 ohm"), text);
    assertEquals(1, pages(scene.folder().root().resolve("owner.pdf"), 595.3f, 841.9f));
  }

  @Test
  void anotherLanguageIsAnotherFileOfTexts() throws Exception {
    Scene scene = new Scene(temporary.resolve("tongue"), 64, 48).source(30, 20, 1.6, 0.42).parts();
    scene.write(true);
    RunReport.writePdf(
        scene.folder(),
        scene.placement(),
        new RunReport.Print(Paper.A4, RunReport.language("eo"), List.of(), ""));
    String text = text(scene.folder().root().resolve("owner.pdf"));
    assertTrue(text.contains("Kio estas trovita sur via plato"), text);
    assertTrue(text.contains("Where it gets warm"), "what is not translated stays English");
    IllegalArgumentException e =
        org.junit.jupiter.api.Assertions.assertThrows(
            IllegalArgumentException.class, () -> RunReport.language("qq"));
    assertTrue(e.getMessage().contains("texts_qq.properties"), e.getMessage());
  }

  @Test
  void theOwnersReportIsOnePageAndTheTechnicalOneSaysEverything() throws Exception {
    Scene scene = scene();
    RunReport.writePdf(
        scene.folder(),
        scene.placement(),
        print(Paper.A4, new OhmReading("3V3", 6.8, "45 ohm or more", Double.NaN)));
    Path owner = scene.folder().root().resolve("owner.pdf");
    Path full = scene.folder().root().resolve("report.pdf");
    assertEquals(1, pages(owner, 595.3f, 841.9f));
    assertTrue(pages(full, 595.3f, 841.9f) > 1);
    String ownersText = text(owner);
    assertTrue(ownersText.contains("C37 is the part to suspect first"), ownersText);
    assertTrue(ownersText.contains("6.8 ohm"), ownersText);
    assertTrue(ownersText.contains("45 ohm or more"), ownersText);
    assertTrue(ownersText.contains("never for anything connected to the mains"), ownersText);
    String fullText = text(full);
    assertTrue(fullText.contains("3.0 \u00d7 10"), fullText);
    assertTrue(fullText.contains("family-wise error 0.05"), fullText);
    assertTrue(fullText.contains("journal.jsonl"), "checksums");
    assertTrue(fullText.contains("<b>"), "a name with markup in it stays a name");
  }

  @Test
  void lettersSizeIsKnown() throws Exception {
    Scene scene = new Scene(temporary.resolve("letter"), 58, 104).source(30, 20, 1.6, 0.42).parts();
    scene.write(true);
    RunReport.writePdf(
        scene.folder(),
        scene.placement(),
        print(Paper.LETTER, new OhmReading("3V3", 6.8, "45 ohm or more", 47)));
    assertEquals(1, pages(scene.folder().root().resolve("owner.pdf"), 612, 792));
    try (PDDocument full = Loader.loadPDF(scene.folder().root().resolve("report.pdf").toFile())) {
      PDFTextStripper firstPage = new PDFTextStripper();
      firstPage.setEndPage(1);
      String text = firstPage.getText(full);
      assertTrue(text.contains("never for anything connected to the mains"), text);
    }
  }

  @Test
  void aRunCutOffStillHasItsPages() throws Exception {
    Scene scene = new Scene(temporary.resolve("cut"), 64, 48);
    scene.write(false);
    RunReport.writePdf(scene.folder(), Placement.NONE, print(Paper.A4));
    String text = text(scene.folder().root().resolve("owner.pdf"));
    assertTrue(text.contains("broken off before it could say anything"), text);
  }

  @Test
  void exponentsAreRaisedDigits() {
    assertEquals(
        "10<sup>\u221212</sup>, m<sup>2</sup>", PdfPages.raised("10\u207b\u00b9\u00b2, m\u00b2"));
  }
}
