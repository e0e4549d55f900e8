package railglow.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import railglow.board.ladder.LadderJudge;
import railglow.board.ladder.LadderStep;
import railglow.board.ladder.StepsReader;

/** A ladder over a real socket against the simulated supply. */
class LadderAtBenchIT {
  @TempDir Path runs;

  @ParameterizedTest
  @CsvSource({
    "hx12, ohmic, 6.8, 0.25",
    "dead-short, current-limited, 0.02, 0.006",
    "leaky-junction, junction-like, NaN, 0"
  })
  void theSimulatedBoardIsJudgedForWhatItIs(
      String scenario, String path, double ohms, double tolerance) throws Exception {
    ByteArrayOutputStream said = new ByteArrayOutputStream();
    PrintStream out = new PrintStream(said, true, StandardCharsets.UTF_8);
    int exit =
        Main.run(
            new Terminal(out, out, false),
            "ladder",
            "--simulated",
            "--scenario",
            scenario,
            "--dwell",
            "300 ms",
            "--runs",
            runs.toString());
    String text = said.toString(StandardCharsets.UTF_8).replaceAll("\\s+", " ");
    assertEquals(0, exit, text);
    assertTrue(text.contains("output proven off"), text);
    assertTrue(text.contains("Path " + path), text);
    Path table;
    try (var files = Files.walk(runs)) {
      table = files.filter(file -> file.endsWith("steps.csv")).findFirst().orElseThrow();
    }
    List<LadderStep> steps = StepsReader.read("steps.csv", Files.readAllBytes(table));
    if (!Double.isNaN(ohms)) {
      assertEquals(ohms, LadderJudge.judge(steps).ohms(), tolerance);
    }
  }
}
