package railglow.process;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Runs that do not end by themselves. */
class StoppedRunsIT {
  @TempDir Path folder;

  @Test
  void anOvercurrentInMidRunEndsWithExitFourAndTheOutputTrulyOff() throws Exception {
    try (ServedBench bench = ServedBench.start(folder, "--fault", "runaway@on+2s")) {
      RailglowProcess hunt = bench.hunt(bench.sequence("1 V", "500 mA", 30));
      assertEquals(4, hunt.awaitExit(60), hunt.output());
      assertTrue(hunt.output().contains("output proven off"), hunt.output());
      assertTruthEndsOff(bench);
    }
  }

  @Test
  void aSupplyWhoseConnectionDropsIsReachedAgainAndDrivenOff() throws Exception {
    try (ServedBench bench = ServedBench.start(folder, "--fault", "drop-connection@on+2s")) {
      RailglowProcess hunt = bench.hunt(bench.sequence("1 V", "500 mA", 30));
      assertEquals(4, hunt.awaitExit(60), hunt.output());
      assertTruthEndsOff(bench);
    }
  }

  @Test
  void ctrlCTwiceEndsInOrderWithExit130() throws Exception {
    try (ServedBench bench = ServedBench.start(folder)) {
      RailglowProcess hunt = bench.hunt(bench.sequence("20 mV", "500 mA", 60));
      hunt.awaitLine("^cycle [1-9]", 40);
      hunt.interrupt();
      hunt.interrupt();
      assertEquals(130, hunt.awaitExit(40), hunt.output());
      assertTrue(hunt.output().contains("output proven off"), hunt.output());
      assertTrue(Files.exists(bench.run().resolve("report.html")), "the report is written");
      assertTruthEndsOff(bench);
    }
  }

  @Test
  void whatKillNineLeavesCanBeReportedAndReplayedAndSaysThatItDidNotFinish() throws Exception {
    try (ServedBench bench = ServedBench.start(folder)) {
      RailglowProcess hunt = bench.hunt(bench.sequence("1 V", "500 mA", 60));
      hunt.awaitLine("^cycle ([5-9]|\\d\\d)", 60);
      hunt.kill();
      hunt.awaitExit(10);
      String run = bench.run().toString();
      assertFalse(Files.exists(bench.run().resolve("findings.json")));
      RailglowProcess report = RailglowProcess.start("report", run);
      assertEquals(0, report.awaitExit(60), report.output());
      assertTrue(report.output().contains("did not finish"), report.output());
      RailglowProcess replay = RailglowProcess.start("replay", run);
      assertEquals(0, replay.awaitExit(60), replay.output());
      assertTrue(replay.output().contains("Cycles "), replay.output());
      assertEquals(0, RailglowProcess.start("replay", "--verify", run).awaitExit(60));
      assertTruthEndsOff(bench);
    }
  }

  private static void assertTruthEndsOff(ServedBench bench) throws Exception {
    List<JsonNode> output =
        bench.truth().stream().filter(e -> HuntOverWiresIT.is(e, "output")).toList();
    assertFalse(output.isEmpty());
    JsonNode last = output.get(output.size() - 1);
    assertEquals(false, last.get("on").asBoolean(), last.toString());
  }
}
