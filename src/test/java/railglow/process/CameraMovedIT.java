package railglow.process;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A camera that is pushed while a run goes on, over the real wires. */
class CameraMovedIT {
  @TempDir Path folder;

  /** What was seen before and after is one scene again: the source stays where it was. */
  @Test
  void aNudgeCostsItsCycleAndTheRunGoesOnInTheOldPlace() throws Exception {
    try (ServedBench bench = ServedBench.start(folder, "--fault", "camera-moved=3px@on+9s")) {
      RailglowProcess hunt = bench.hunt(bench.sequence("1 V", "500 mA", 12, "no"));
      assertEquals(0, hunt.awaitExit(90), hunt.output());
      String journal = Files.readString(bench.run().resolve("journal.jsonl"));
      assertTrue(journal.contains("\"reason\":\"a moved event\""), "the cycle says why");
      assertTrue(hunt.output().contains("moved"), hunt.output());
      JsonNode source = bench.findings().get("sources").get(0);
      assertEquals(163.9, source.get("column").asDouble(), 0.6, hunt.output());
      assertEquals(114.1, source.get("row").asDouble(), 0.6, hunt.output());
    }
  }

  /** The nearer one is about as far as a part is long. */
  @ParameterizedTest
  @ValueSource(ints = {10, 70})
  void aSceneThatIsNotFoundAgainEndsTheRunWithTheReasonAndTheOutputProvenOff(int pixels)
      throws Exception {
    String push = "camera-moved=" + pixels + "px@on+9s";
    try (ServedBench bench = ServedBench.start(folder, "--fault", push)) {
      RailglowProcess hunt = bench.hunt(bench.sequence("1 V", "500 mA", 30, "no"));
      assertEquals(4, hunt.awaitExit(90), hunt.output());
      String said = hunt.output().replaceAll("\\s+", " ");
      assertTrue(said.contains("moved and the scene is not found again"), said);
      assertTrue(said.contains("output proven off"), said);
      List<JsonNode> output =
          bench.truth().stream().filter(e -> HuntOverWiresIT.is(e, "output")).toList();
      assertEquals(false, output.get(output.size() - 1).get("on").asBoolean());
    }
  }
}
