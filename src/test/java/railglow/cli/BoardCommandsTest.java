package railglow.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The commands that think in rails and parts, as a user types them. */
class BoardCommandsTest {
  private static final String HX12 = "docs/examples/hx12/board.yaml";
  private static final String READINGS = "docs/examples/hx12/readings.csv";

  @TempDir Path folder;

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

  @Test
  void theReadingsOfTheDemoBoardPointTo3V3AndProposeHowToPushIt() {
    assertEquals(0, railglow("rails", "--board", HX12, "--readings", READINGS), complained());
    assertTrue(said().contains("Hunt first 3V3"), said());
    assertTrue(said().contains("6.8 ohm where 45 ohm to 600 ohm is normal"), said());
    assertTrue(said().contains("level 2.6 V"), said());
    assertTrue(said().contains("Read too   1V8, 1V1_CORE"), said());
  }

  /** A copy of the demo board in which one text stands in another's place. */
  private String board(String text, String instead) throws Exception {
    Path shipped = Path.of("docs/examples/hx12");
    try (var files = Files.list(shipped)) {
      for (Path file : files.toList()) {
        Files.copy(file, folder.resolve(file.getFileName()));
      }
    }
    String whole = Files.readString(shipped.resolve("board.yaml"));
    assertTrue(whole.contains(text), text);
    Path copy = folder.resolve("board.yaml");
    Files.writeString(copy, whole.replace(text, instead));
    return copy.toString();
  }

  @Test
  void whatElseToReadIsSaidWhenARailIsWrongAndWhenThePartOfTheVerdictIsNamed() throws Exception {
    String board = board("when: 24V_IN, read: [12V]", "when: C37, read: [5V0, 12V]");
    assertEquals(0, railglow("rails", "--board", board, "3V3=300 ohm"), complained());
    assertTrue(!said().contains("Read too"), said());
    assertEquals(0, railglow("rails", "--board", board, "3V3=6.8 ohm"), complained());
    assertTrue(said().contains("Read too   1V8, 1V1_CORE: their converters are fed"), said());
    assertTrue(!said().contains("12V: a surge"), said());
    String kept = folder.resolve("case-3").toString();
    assertEquals(0, railglow(with(closing(board, kept), "3V3=52 ohm")), complained());
    assertTrue(said().contains("Read too   5V0, 12V: a surge at the input"), said());
  }

  @Test
  void aRailWithoutANominalVoltageIsNamedAndIsStillHuntedWithLittle() throws Exception {
    String board = board("    nominal: 3.3 V\n    highest-injection: 2.6 V\n", "");
    assertEquals(0, railglow("rails", "--board", board, "3V3=6.8 ohm"), complained());
    String said = said().replaceAll("\\s+", " ");
    assertTrue(
        said.contains("Gap rail 3V3 has no nominal voltage: at most 1 V is injected."), said);
    assertTrue(said.contains("Hunt first 3V3"), said);
    assertTrue(said.contains("Proposal level 1 V"), said);
    assertTrue(said.contains("At most 1 V: the nominal voltage of 3V3 is not known"), said);
    String[] plan = {"plan", "--simulated", "--board", board, "--rail", "3V3", "--level"};
    assertEquals(0, railglow(with(plan, "1 V")), complained());
    assertTrue(said().contains("rail 3V3 has no nominal voltage"), said());
    assertEquals(3, railglow(with(plan, "1.2 V")));
    assertTrue(complained().contains("1.2 V") && complained().contains("1 V"), complained());
    assertTrue(complained().contains("Nothing was opened"), complained());
  }

  @Test
  void readingsAreKeptInACaseAndCorrectedByTypingThemAgain() throws Exception {
    String kept = folder.resolve("case-1").toString();
    assertEquals(
        0,
        railglow("rails", "--board", HX12, "--case", kept, "3V3=0.05 ohm", "5V0=400 ohm"),
        complained());
    assertTrue(said().contains("dead short"), said());
    assertEquals(0, railglow("rails", "--board", HX12, "--case", kept, "3V3=300 ohm"));
    assertTrue(said().contains("Hunt first none"), said());
    String table = Files.readString(folder.resolve("case-1/readings.csv"));
    assertTrue(table.contains("300.0 ohm") && table.contains("400.0 ohm"), table);
    assertTrue(!table.contains("0.05 ohm"), table);
  }

  @Test
  void aKnownGoodBoardDecidesWhatIsNormal() throws Exception {
    Path good = folder.resolve("good.csv");
    Files.writeString(good, "rail,reading\n3V3,8 ohm\n");
    assertEquals(
        0, railglow("rails", "--board", HX12, "--known-good", good.toString(), "3V3=7 ohm"));
    assertTrue(said().contains("Hunt first none"), said());
  }

  @Test
  void badReadingsAreNamedAndExitWithTwo() {
    assertEquals(2, railglow("rails", "--board", HX12, "3V3=7"));
    assertTrue(complained().contains("has no unit"), complained());
    assertEquals(2, railglow("rails", "--board", HX12, "--readings", "none.csv"));
    assertTrue(complained().contains("no table of readings"), complained());
    assertEquals(2, railglow("rails"));
  }

  @Test
  void stepsOfALadderAreJudged() throws Exception {
    Path steps = folder.resolve("steps.csv");
    StringBuilder table = new StringBuilder("voltage,current\n");
    for (int i = 1; i <= 10; i++) {
      table.append(i * 100 + " mV," + i * 100 / 6.8 + " mA\n");
    }
    Files.writeString(steps, table);
    assertEquals(0, railglow("ladder", "--steps", steps.toString()), complained());
    assertTrue(said().contains("Path       ohmic"), said());
    assertTrue(said().contains("6.8 ohm"), said());
    assertTrue(said().contains("low-ohm-hunt"), said());
    assertTrue(said().contains("(supposed: common practice, no"), said());
    Files.writeString(
        steps,
        table
            .toString()
            .replace("current\n", "current,voltage-error,current-error\n")
            .replace(" mA\n", " mA,1 mV,20 uA\n"));
    assertEquals(0, railglow("ladder", "--steps", steps.toString()), complained());
    assertTrue(said().contains("Errors     of each step as the table states them."), said());
    Files.writeString(steps, "voltage,current\n1 V,2\n");
    assertEquals(2, railglow("ladder", "--steps", steps.toString()));
    assertTrue(complained().contains("steps.csv:2:5"), complained());
  }

  @Test
  void theMostDelicatePartOnTheRailIsShownInThePlanAndRefusesWhatItCannotBear() {
    String[] plan = {
      "plan", "--simulated", "--board", HX12, "--rail", "3V3", "--level", "2 V", "--current-limit"
    };
    assertEquals(0, railglow(with(plan, "900 mA")), complained());
    assertTrue(said().contains("1 A        U10, the most delicate part on the rail"), said());
    assertEquals(3, railglow(with(plan, "1.2 A")));
    assertTrue(complained().contains("U10, the most delicate part on the rail"), complained());
    for (String command : List.of("hunt", "touch", "ladder")) {
      plan[0] = command;
      assertEquals(3, railglow(with(plan, "1.2 A")), command);
      assertTrue(complained().contains("U10, the most delicate part on the rail"), complained());
      assertTrue(complained().contains("Nothing was opened"), complained());
    }
  }

  @Test
  void leadsAndClipLimitTheCurrentByTheirRating() throws Exception {
    Path bench = folder.resolve("bench.yaml");
    Path shipped = Path.of("instruments").toAbsolutePath();
    Files.writeString(
        bench,
        Files.readString(shipped.resolve("bench-simulated.yaml"))
            .replace("descriptor: ", "descriptor: " + shipped + "/")
            .replace("connector-rating: 5 A", "connector-rating: 400 mA"));
    assertEquals(
        3, railglow("plan", "--bench", bench.toString(), "--board", HX12, "--rail", "3V3"));
    assertTrue(complained().contains("clip's or connector's rating"), complained());
    assertEquals(0, railglow("rails", "--board", HX12, "--bench", bench.toString(), "3V3=1.0 ohm"));
    assertTrue(said().contains("At most 400 mA: the clip's or connector's rating"), said());
  }

  @Test
  void whatIsEnteredForARunIsRefusedBeforeAnythingIsOpenedWhenItCannotBe() {
    for (String command : List.of("hunt", "touch")) {
      assertEquals(2, railglow(command, "--simulated", "--reflected", "300 degC"));
      assertTrue(
          complained().contains("--reflected is 300 degC; allowed is -50 degC to 100 degC"),
          complained());
      assertEquals(2, railglow(command, "--simulated", "--reflected", "24 K"));
      assertTrue(complained().contains("degC"), complained());
      assertEquals(2, railglow(command, "--simulated", "--reflected-error", "2 K"));
      assertTrue(complained().contains("give both"), complained());
      assertEquals(2, railglow(command, "--simulated", "--clip", "C999"));
      assertTrue(complained().contains("C999 is no part of the board"), complained());
      assertEquals(2, railglow(command, "--simulated", "--without-board", "--clip", "C9"));
      assertTrue(complained().contains("need a board file"), complained());
    }
  }

  private static String[] closing(String board, String kept) {
    return new String[] {
      "rails",
      "--board",
      board,
      "--case",
      kept,
      "--rail",
      "3V3",
      "--part",
      "C37",
      "--verdict",
      "replace-part"
    };
  }

  private static String[] with(String[] words, String last) {
    String[] all = java.util.Arrays.copyOf(words, words.length + 1);
    all[words.length] = last;
    return all;
  }

  @Test
  void comparingWhatIsNoRunIsRefused() {
    assertEquals(2, railglow("compare", folder.toString(), folder.toString()));
    assertTrue(complained().contains("holds no journal"), complained());
    assertEquals(2, railglow("compare", folder.toString(), folder.toString(), "--as", "likes"));
    assertTrue(complained().contains("two-points"), complained());
  }

  @Test
  void aCaseIsClosedWithAVerdictThatTheReadingsConfirmOrNot() throws Exception {
    String kept = folder.resolve("case-2").toString();
    String[] close = closing(HX12, kept);
    assertEquals(0, railglow("rails", "--board", HX12, "--case", kept, "3V3=6.8 ohm"));
    assertEquals(0, railglow(close), complained());
    assertTrue(said().contains("not confirmed yet"), said());
    assertEquals(0, railglow("rails", "--board", HX12, "--case", kept, "3V3=52 ohm"));
    assertEquals(0, railglow(close), complained());
    assertTrue(said().contains("confirmed."), said());
    String file = Files.readString(folder.resolve("case-2/verdict.yaml"));
    assertTrue(file.contains("verdict: 'replace-part'"), file);
    assertEquals(
        2, railglow("rails", "--board", HX12, "--case", kept, "--verdict", "replace-part"));
    assertEquals(
        2,
        railglow("rails", "--board", HX12, "--case", kept, "--rail", "3V3", "--verdict", "mended"));
    assertTrue(complained().contains("no-fault-found are known"), complained());
  }
}
