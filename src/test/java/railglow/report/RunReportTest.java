package railglow.report;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import railglow.journal.NpyFile;
import railglow.journal.RunFolder;
import railglow.thermal.Plane;
import railglow.units.Interval;

class RunReportTest {
  @TempDir Path temporary;

  private Scene scene(String name, int width, int height) {
    return new Scene(temporary.resolve(name), width, height);
  }

  private static String page(RunFolder folder) throws IOException {
    return Files.readString(folder.report());
  }

  @Test
  void theFirstLinesSayWhatWasFoundAndHowSure() throws IOException {
    Scene scene = scene("2026-03-01-HX_12-3V3-01", 64, 48).source(30, 20, 1.6, 0.42).parts();
    scene.write(true);
    assertEquals(List.of(), RunReport.write(scene.folder(), scene.placement()));
    String page = page(scene.folder());
    String top = page.substring(page.indexOf("<body>"), page.indexOf("<svg"));
    assertTrue(top.contains("Heat at C37: it swings by 420 mK"), top);
    assertEquals(top.indexOf("420 mK"), top.lastIndexOf("420 mK"), "said once");
    assertTrue(top.contains("would settle near 365 mK to 475 mK above its start"), top);
    assertTrue(top.contains("3.0 \u00d7 10\u207b\u00b9\u00b2"), top);
    assertTrue(top.contains("Lift C37; 3V3 should then read 45 ohm or more."), top);
    assertTrue(top.contains("The output was proven off."), top);
    assertTrue(
        page.contains(
            "467 mK +- 37 mK (ceramic body of C37, 0.90 +- 0.04;"
                + " mirrors 23 degC +- 3 K, entered)"),
        "the rise behind the surface");
  }

  @Test
  void aSettledRiseThatNobodyCanKnowIsNotGivenAsANumber() throws IOException {
    Scene scene =
        scene("brief", 64, 48).source(30, 20, 1.6, 0.42, new Interval(-0.857, 2.087)).parts();
    scene.write(true);
    RunReport.write(scene.folder(), scene.placement());
    String page = page(scene.folder());
    assertTrue(page.contains("be told from these pulses"), page);
    assertTrue(page.contains("420 mK (365 mK to 475 mK)"), "the swing is known");
    assertFalse(page.contains("-857"), "no board cools where it is heated");
  }

  @Test
  void aNullRunSaysWhatWouldHaveBeenSeen() throws IOException {
    Scene scene = scene("null", 58, 104);
    scene.write(true, 12);
    RunReport.write(scene.folder(), scene.placement());
    String page = page(scene.folder());
    assertTrue(page.contains("Nothing found"), page);
    assertTrue(
        page.contains("more than 12 mW at the fault would have been seen with 95 % probability"),
        page);
    assertFalse(page.contains("source-1"));
  }

  @Test
  void aRunCutOffIsShownAsFarAsItGoesAndSaysSo() throws IOException {
    Scene scene = scene("cut", 64, 48).source(30, 20, 1.6, 0.42);
    scene.write(false);
    List<String> problems = RunReport.write(scene.folder(), scene.placement());
    assertTrue(problems.get(0).contains("not finished"), problems.toString());
    String page = page(scene.folder());
    assertTrue(page.contains("did not finish its record"), page);
    assertTrue(page.contains("They can be made from its frames: replay the run."), page);
    assertTrue(page.contains("Voltage, current, power and hottest pixel"), page);
    assertFalse(page.contains("proven off."), "nothing is claimed of an output nobody proved");
  }

  @Test
  void whatIsMissingIsNamedAndTheRestIsShown() throws IOException {
    Scene scene = scene("half", 64, 48).source(30, 20, 1.6, 0.42).parts();
    RunFolder folder = scene.write(true);
    Files.delete(folder.plane("quadrature"));
    Files.write(folder.plane("background"), new byte[10]);
    Files.delete(folder.used().resolve("board.yaml"));
    List<String> problems = RunReport.write(folder, scene.placement());
    assertEquals(3, problems.size(), problems.toString());
    String page = page(folder);
    assertTrue(page.contains("used/board.yaml"), page);
    assertTrue(page.contains("quadrature.npy"), page);
    assertTrue(Files.exists(folder.picture("difference")));
    assertFalse(Files.exists(folder.picture("quadrature")));
  }

  @Test
  void thePageIsWrittenInAnotherLanguageWhereItsTextsAre() throws IOException {
    Scene scene = scene("language", 64, 48).source(30, 20, 1.6, 0.42);
    scene.write(true);
    RunReport.write(scene.folder(), scene.placement(), RunReport.language("eo"));
    String page = page(scene.folder());
    assertTrue(page.contains("lang=\"eo\""), page.substring(0, 200));
    assertTrue(page.contains("Tensio, kurento, povumo"), "its own words where it has them");
    assertTrue(page.contains("Cycle"), "English where it has none");
    RunReport.write(scene.folder(), scene.placement());
    assertTrue(page(scene.folder()).contains("Voltage, current, power and hottest pixel"));
  }

  @Test
  void theTrustMaskIsShownWhereThereIsOneAndNotMissedElsewhere() throws IOException {
    Scene scene = scene("trust", 64, 48).source(30, 20, 1.6, 0.42);
    scene.write(true);
    RunReport.write(scene.folder(), scene.placement());
    assertFalse(page(scene.folder()).contains("Trust mask"));
    Plane trust = new Plane(64, 48);
    java.util.Arrays.fill(trust.values(), 1);
    trust.values()[20 * 64 + 30] = 0.25f;
    NpyFile.write(scene.folder().plane("trust"), trust);
    assertEquals(List.of(), RunReport.write(scene.folder(), scene.placement()));
    assertTrue(page(scene.folder()).contains("Trust mask"));
    assertTrue(Files.exists(scene.folder().picture("trust")));
    assertTrue(Files.exists(scene.folder().planes().resolve("trust.tif")));
    NpyFile.write(scene.folder().plane("trust"), new Plane(63, 48));
    assertEquals(
        List.of("Plane trust is 63 x 48, not the camera's size: left out."),
        RunReport.write(scene.folder(), scene.placement()));
  }

  @Test
  void aRenamedFolderIsNoticed() throws IOException {
    Scene scene = scene("first-name", 64, 48);
    scene.write(true);
    Path renamed = temporary.resolve("second-name");
    Files.move(scene.folder().root(), renamed);
    List<String> problems = RunReport.write(new RunFolder(renamed), Placement.NONE);
    assertEquals(
        List.of("The folder is called second-name, but the run in it is first-name."), problems);
  }

  @Test
  void aUsersTextNeverBecomesMarkup() throws IOException {
    Scene scene = scene("a<script>alert(1)<", 64, 48);
    scene.write(true);
    RunReport.write(scene.folder(), Placement.NONE);
    String page = page(scene.folder());
    assertFalse(page.contains("<script>"), "unescaped text in the page");
    assertTrue(page.contains("a&lt;script&gt;alert(1)&lt;"), page);
  }

  @Test
  void thePageNeedsNothingFromOutside() throws IOException {
    Scene scene = scene("alone", 64, 48).source(30, 20, 1.6, 0.42).parts();
    scene.write(true);
    RunReport.write(scene.folder(), scene.placement());
    String page = page(scene.folder()).replace("http://www.w3.org/2000/svg", "");
    assertFalse(page.contains("http:") || page.contains("https:") || page.contains("<link"));
    assertFalse(page.contains("src="), "no file beside the page");
  }

  @Test
  void theTraceIsATableThatSpreadsheetsRead() throws IOException {
    Scene scene = scene("trace", 64, 48);
    scene.write(true);
    RunReport.write(scene.folder(), Placement.NONE);
    String[] lines = Files.readString(scene.folder().trace()).split("\r\n", -1);
    assertEquals(Trace.HEADER, lines[0]);
    assertEquals("", lines[lines.length - 1], "ends with a line end");
    for (int i = 1; i < lines.length - 1; i++) {
      String unquoted = lines[i].replaceAll("\"[^\"]*\"", "");
      assertEquals(11, unquoted.split(",", -1).length, lines[i]);
    }
    assertEquals("0.105000,0.001000,0.000100,0.000000,PROVEN_OFF,NONE,,,,,", lines[1]);
  }

  @Test
  void thePlanesAreTiffsWithEveryBit() throws IOException {
    Scene scene = scene("tiff", 64, 48).source(30, 20, 1.6, 0.42).parts();
    scene.write(true);
    RunReport.write(scene.folder(), scene.placement());
    BufferedImage image = ImageIO.read(scene.folder().planes().resolve("in-phase.tif").toFile());
    float[] values = image.getRaster().getPixels(0, 0, 64, 48, (float[]) null);
    assertArrayEquals(NpyFile.read(scene.folder().plane("in-phase")).values(), values, 0f);
  }
}
