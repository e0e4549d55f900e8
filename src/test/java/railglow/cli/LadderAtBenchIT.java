package railglow.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import railglow.board.ladder.LadderJudge;
import railglow.board.ladder.LadderStep;
import railglow.board.ladder.StepsReader;
import railglow.journal.Entry;
import railglow.journal.Journal;
import railglow.journal.JournalReader;
import railglow.journal.RunFolder;
import railglow.run.ladder.LadderReplay;
import railglow.sim.BenchPorts;
import railglow.sim.BenchScenario;
import railglow.sim.BenchScenarios;
import railglow.sim.SimulatedBench;
import railglow.sim.circuit.CircuitSettings;
import railglow.sim.circuit.Junction;
import railglow.sim.circuit.LoadBranch;
import railglow.time.SystemClock;

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
    String text =
        Typed.railglow(
            0,
            "ladder",
            "--simulated",
            "--scenario",
            scenario,
            "--dwell",
            "300 ms",
            "--runs",
            runs.toString());
    assertTrue(text.contains("output proven off"), text);
    assertTrue(text.contains("Path " + path), text);
    assertTrue(text.contains("Errors each step is taken to 1 mV and 100 uA (one digit"), text);
    Path table;
    try (var files = Files.walk(runs)) {
      table = files.filter(file -> file.endsWith("steps.csv")).findFirst().orElseThrow();
    }
    List<LadderStep> steps = StepsReader.read("steps.csv", Files.readAllBytes(table));
    Journal record = JournalReader.read(new RunFolder(table.getParent()));
    assertTrue(record.finished());
    assertEquals(steps, LadderReplay.steps(record), "the record gives the steps again");
    assertTrue(record.of(Entry.Hottest.class).count() > 3, "the camera watched");
    String found =
        Typed.railglow(0, "runs", "--runs", runs.toString(), "--verdict", "LADDER", "3V3");
    assertTrue(found.contains("A ladder: " + path + "; "), found);
    assertTrue(found.contains(table.getParent().toString()), found);
    if (!Double.isNaN(ohms)) {
      assertTrue(text.contains("In all 3V3 reads"), text);
      assertTrue(text.contains("of leads are taken off, known to"), text);
      assertEquals(ohms, LadderJudge.judge(steps).ohms(), tolerance);
    }
  }

  private Path bench(SimulatedBench served, String hottest) throws Exception {
    Path shipped = Path.of("instruments").toAbsolutePath();
    Path file = runs.resolve("bench.yaml");
    Files.writeString(
        file,
        Files.readString(shipped.resolve("bench-simulated.yaml"))
            .replace("descriptor: ", "descriptor: " + shipped + "/")
            .replace("tcp://127.0.0.1:5025", SimulatedBenches.supplyAddress(served))
            .replace("tcp://127.0.0.1:5600", SimulatedBenches.cameraAddress(served))
            .replace("hottest: 70 degC", "hottest: " + hottest));
    return file;
  }

  private String ladder(int exitCode, Path bench, String level, int levels) {
    String text =
        Typed.railglow(
            exitCode,
            "ladder",
            "--bench",
            bench.toString(),
            "--board",
            "hx12",
            "--rail",
            "3V3",
            "--level",
            level,
            "--current-limit",
            "900 mA",
            "--levels",
            String.valueOf(levels),
            "--dwell",
            "200 ms",
            "--runs",
            runs.toString());
    assertTrue(text.contains("output proven off"), text);
    return text;
  }

  /** Beside 45 ohm a path that takes twenty times more from about 0.6 V on. */
  @Test
  void theFirstStepThatDepartsEndsTheLadderAtTheWire() throws Exception {
    BenchScenario healthy = BenchScenarios.named("healthy").orElseThrow();
    CircuitSettings circuit = healthy.circuit();
    List<LoadBranch> branches = new ArrayList<>(circuit.branches());
    branches.add(LoadBranch.leakyJunction(new Junction("U8", 1e-10, 0.03), 0.5));
    try (SimulatedBench served =
        SimulatedBench.start(
            healthy.withCircuit(circuit.withBranches(branches)),
            BenchPorts.ANY,
            SystemClock.INSTANCE)) {
      String text = ladder(0, bench(served, "70 degC"), "2 V", 6);
      assertTrue(text.contains("Path breaking down"), text);
      assertTrue(text.contains("the path breaks down; output proven off"), text);
      assertEquals(4, steps().size(), "no level beyond the first that departs");
    }
  }

  @Test
  void heatThatTheCameraSeesStopsTheLadder() throws Exception {
    try (SimulatedBench served =
        SimulatedBench.start(BenchScenarios.hx12(), BenchPorts.ANY, SystemClock.INSTANCE)) {
      String text = ladder(4, bench(served, "25 degC"), "2.6 V", 20);
      assertTrue(text.contains("the hottest pixel is at"), text);
      assertTrue(steps().size() < 20, "stopped before the last level");
    }
  }

  private List<LadderStep> steps() throws Exception {
    try (var files = Files.walk(runs)) {
      Path table = files.filter(file -> file.endsWith("steps.csv")).findFirst().orElseThrow();
      return StepsReader.read("steps.csv", Files.readAllBytes(table));
    }
  }
}
