package railglow.process;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Fresh hunts on simulated boards, set side by side by the command: at two injection points, before
 * and after lifting the part, and against a known-good board.
 */
class CompareIT {
  @TempDir static Path folder;
  private static Path atC9;
  private static Path atC40;
  private static Path lifted;

  @BeforeAll
  static void hunts() throws Exception {
    atC9 = hunt("c9", "hx12", "C9");
    atC40 = hunt("c40", "hx12", "C40");
    lifted = hunt("lifted", "healthy", "C9");
  }

  /** One run with the probe held on a part's pad. */
  private static Path hunt(String name, String scenario, String pad) throws Exception {
    Path own = Files.createDirectory(folder.resolve(name));
    try (ServedBench bench =
        ServedBench.start(own, "--scenario", scenario, "--hand", "touch:" + pad + "@0s..900s")) {
      RailglowProcess hunt = bench.hunt(bench.sequence("2 V", "450 mA", 8, "no"));
      assertEquals(0, hunt.awaitExit(150), hunt.output());
      return bench.run();
    }
  }

  private static String compare(Path first, Path second, String question) throws Exception {
    RailglowProcess compare =
        RailglowProcess.start("compare", "--as", question, first.toString(), second.toString());
    assertEquals(0, compare.awaitExit(60), compare.output());
    return compare.output().replaceAll("\\s+", " ");
  }

  @Test
  void whatStaysHotAtBothInjectionPointsIsTheFault() throws Exception {
    String said = compare(atC9, atC40, "two-points");
    assertTrue(said.contains("C37 stays hot at both points: the fault is there"), said);
    assertTrue(said.contains("per watt the pictures differ nowhere"), said);
  }

  @Test
  void afterLiftingThePartItIsGoneAndThePicturesDifferThereAlone() throws Exception {
    String said = compare(atC9, lifted, "before-after");
    assertTrue(said.contains("C37 is gone and nothing else is hot: the repair is confirmed"), said);
    assertTrue(said.contains("at C37 (x 78.0 mm, y 31.0 mm) the second is cooler by"), said);
    assertFalse(said.contains("the second is warmer by"), said);
  }

  @Test
  void againstAKnownGoodBoardTheFaultIsWarmerPerWatt() throws Exception {
    String said = compare(lifted, atC9, "known-good");
    assertTrue(said.contains("C37 is warmer per watt than on"), said);
    assertFalse(said.contains("the second is cooler by"), said);
  }

  @Test
  void runsOfEqualNamesAreToldApartByTheirFolders() throws Exception {
    assertEquals(atC9.getFileName(), lifted.getFileName());
    String said = compare(lifted, atC9, "known-good");
    assertTrue(said.contains("lifted/runs/" + lifted.getFileName()), said);
    assertTrue(said.contains("c9/runs/" + atC9.getFileName()), said);
  }

  @Test
  void aRunIsNotComparedWithItself() throws Exception {
    RailglowProcess compare =
        RailglowProcess.start("compare", atC9.toString(), atC9.resolve(".").toString());
    assertEquals(2, compare.awaitExit(30), compare.output());
    assertTrue(compare.output().contains("are the same run"), compare.output());
  }
}
