package railglow.process;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A camera's driver program that dies in mid-run, killed over the real wires. */
class CameraLostIT {
  private static final Path SOCAT = Path.of("/usr/bin/socat");
  @TempDir Path folder;

  @Test
  void aKilledDriverIsStartedAgainAndOneThatStaysAwayStopsTheRunWithTheOutputProvenOff()
      throws Exception {
    assumeTrue(Files.isExecutable(SOCAT), "no socat here");
    try (ServedBench bench = ServedBench.start(folder)) {
      Path driver = bench.cameraDriver();
      RailglowProcess hunt =
          bench.hunt(
              bench.benchWithCameraAt("exec:" + driver), bench.sequence("1 V", "500 mA", 30, "no"));
      hunt.awaitLine("^cycle [1-9]", 40);
      killDriverOf(hunt);
      hunt.awaitLine("The camera was lost \\(once\\): .*ended with exit code 137", 10);
      hunt.awaitLine("The camera gives frames again", 10);
      Files.delete(driver);
      killDriverOf(hunt);
      hunt.awaitLine("The camera was lost \\(2 times\\): .*ended with exit code 137", 10);
      assertEquals(4, hunt.awaitExit(40), hunt.output());
      String said = hunt.output().replaceAll("\\s+", " ");
      assertTrue(
          Pattern.compile("no new camera frame for 2\\.\\d+ s.*camera was lost: can't start")
              .matcher(said)
              .find(),
          said);
      assertTrue(said.contains("output proven off"), said);
      String journal = Files.readString(bench.run().resolve("journal.jsonl"));
      assertTrue(journal.contains("The camera was lost (2 times)"), "losses are in the journal");
      assertTrue(Pattern.compile("\"framesMissing\":[1-9]").matcher(journal).find());
      List<JsonNode> output =
          bench.truth().stream().filter(e -> HuntOverWiresIT.is(e, "output")).toList();
      assertEquals(false, output.get(output.size() - 1).get("on").asBoolean());
    }
  }

  private static void killDriverOf(RailglowProcess hunt) {
    ProcessHandle.of(hunt.pid())
        .orElseThrow()
        .children()
        .filter(child -> child.info().command().orElse("").contains("socat"))
        .forEach(ProcessHandle::destroyForcibly);
  }
}
