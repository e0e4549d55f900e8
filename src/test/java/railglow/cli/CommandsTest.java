package railglow.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import picocli.CommandLine;

/** The commands as a user types them, in this process, opening nothing. */
class CommandsTest {
  @TempDir Path folder;
  private final Typed typed = Typed.apart();

  private int run(String... words) {
    return typed.run(words);
  }

  private String answers() {
    return typed.answers();
  }

  private String complaints() {
    return typed.complaints();
  }

  static List<String> commands() {
    CommandLine line =
        new CommandLine(
            new Railglow(), new CommandFactory(new Terminal(System.out, System.err, false)));
    Commands.add(line, new String[0]);
    return List.copyOf(line.getSubcommands().keySet());
  }

  @ParameterizedTest
  @MethodSource("commands")
  void everyCommandExplainsItself(String command) {
    assertEquals(0, run(command, "--help"));
    assertTrue(answers().contains("Usage: railglow " + command), answers());
    assertFalse(answers().contains("\u001b"), "no control codes in a pipe");
  }

  @Test
  void withoutACommandTheCommandsAreListed() {
    assertEquals(0, run());
    assertTrue(answers().contains("hunt"));
    assertTrue(answers().contains("never for anything connected to the mains"), answers());
  }

  @Test
  void aTypingMistakeIsSaidInOneSentence() {
    assertEquals(ExitCode.BAD_USE, run("plan", "--simulatd"));
    assertTrue(complaints().contains("--simulatd"), complaints());
    assertFalse(complaints().contains("Exception"), complaints());
  }

  @Test
  void aQuantityWithoutUnitIsRefused() {
    assertEquals(ExitCode.BAD_USE, run("plan", "--simulated", "--level", "1.5"));
    assertTrue(complaints().contains("has no unit"), complaints());
  }

  @Test
  void thePlanOfTheDemoShowsTimelineWorstCaseLimitsAndForecast() {
    assertEquals(0, run("plan", "--simulated", "--rail-reads", "6.8 ohm"));
    for (String part :
        List.of("Timeline", "Worst case", "Limits", "Forecast", "board file, rail 3V3", "K/W")) {
      assertTrue(answers().contains(part), part + " in\n" + answers());
    }
  }

  /** 500 mA into 50 mohm and 120 mohm of leads: I^2 R, by hand. */
  @Test
  void thePlanSaysWhatADeadShortWouldGetAndWhatTheLeadsWouldWaste() {
    assertEquals(0, run("plan", "--simulated"));
    assertTrue(
        answers()
            .contains(
                "a rail of 50 mohm takes 500 mA (the supply limits it): 12.5 mW in the board, 30 mW"
                    + " in the leads"),
        answers());
  }

  /** 33 000 counts of 10 mK are 56.85 degC. */
  @Test
  void aCameraThatCanNotSayTheHottestThatIsAllowedIsRefused() throws IOException {
    Path bench = folder.resolve("bench.yaml");
    Files.copy(Path.of("instruments/bench-simulated.yaml"), bench);
    Files.copy(
        Path.of("instruments/supply-simulated.yaml"), folder.resolve("supply-simulated.yaml"));
    String camera = Files.readString(Path.of("instruments/camera-simulated.yaml"));
    Files.writeString(folder.resolve("camera-simulated.yaml"), camera.replace("65535", "33000"));
    assertEquals(ExitCode.REFUSED, run("plan", "--bench", bench.toString()));
    String said = complaints();
    assertTrue(said.contains("the end of the camera's scale allows at most 56.85"), said);
    assertTrue(said.contains("lower 'hottest-allowed'"), said);
  }

  @Test
  void everyRefusalIsListedWithValueLimitAndOwnerAndNothingIsOpened() {
    Path runs = folder.resolve("runs");
    int code =
        run(
            "hunt",
            "--simulated",
            "--level",
            "5 V",
            "--current-limit",
            "4 A",
            "--limit-power",
            "1 W",
            "--runs",
            runs.toString());
    assertEquals(ExitCode.REFUSED, code);
    assertTrue(complaints().contains("5 V, but board file, rail 3V3 allows at most 2.6 V"));
    assertTrue(
        complaints()
            .contains("4 A, but U10, the most delicate part on the rail (board file) allows"),
        complaints());
    assertTrue(complaints().contains("20 W, but the command line allows at most 1 W"));
    assertFalse(Files.exists(runs), "nothing was made");
  }

  @Test
  void anUnknownRailNamesThoseThereAre() {
    assertEquals(ExitCode.BAD_USE, run("plan", "--simulated", "--board", "hx12", "--rail", "9V9"));
    assertTrue(complaints().contains("1V1_CORE"), complaints());
  }

  @Test
  void aBadSequenceNamesFileLineValueAndRange() throws IOException {
    Path bad = folder.resolve("bad.yaml");
    String good = Files.readString(Path.of("sequences/gentle.yaml"));
    Files.writeString(bad, good.replace("level: 500 mV", "level: 500 V\nlevle: 1 V"));
    assertEquals(ExitCode.BAD_USE, run("plan", "--simulated", "--sequence", bad.toString()));
    assertTrue(complaints().contains("bad.yaml:4: 'level' is 500 V; allowed is"), complaints());
    assertTrue(complaints().contains("bad.yaml:5: 'levle' is not a key known here"), complaints());
  }

  @Test
  void aSequenceThatIsNowhereNamesTheShippedOnes() {
    assertEquals(ExitCode.BAD_USE, run("plan", "--simulated", "--sequence", "nonsense"));
    assertTrue(complaints().contains("low-ohm-hunt"), complaints());
  }

  @Test
  void withoutABenchTheUserIsToldHowToGetOne() {
    assertEquals(ExitCode.BAD_USE, run("plan"));
    assertTrue(complaints().contains("--simulated"), complaints());
  }

  @Test
  void aFolderThatIsNoRunIsSaidSo() {
    assertEquals(ExitCode.BAD_USE, run("replay", folder.toString()));
    assertTrue(complaints().contains("is not a run folder"), complaints());
    assertEquals(ExitCode.BAD_USE, run("report", folder.resolve("none").toString()));
    assertTrue(complaints().contains("there is no run folder"), complaints());
  }

  @Test
  void theCompletionScriptNamesTheCommands() {
    assertEquals(0, run("generate-completion"));
    assertTrue(answers().contains("hunt") && answers().contains("complete -F"), "a bash script");
  }
}
