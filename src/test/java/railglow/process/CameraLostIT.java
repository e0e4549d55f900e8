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
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A camera's driver program that dies in mid-run, killed over the real wires. */
class CameraLostIT {
  private static final Path SOCAT = Path.of("/usr/bin/socat");
  private static final Path PYTHON = Path.of("/usr/bin/python3");
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
      assertEquals(false, lastOutput(bench).get("on").asBoolean());
    }
  }

  /**
   * Frames of another size come on and on, so that the stream never falls silent: they are named,
   * none is used, and the run stops as if there were none.
   */
  @ParameterizedTest
  @CsvSource({
    "frame[:60000], frames begin every 60000 bytes in it",
    "frame + frame[16:8016], its frame counter jumps about",
  })
  void aStreamWhoseFramesChangeTheirSizeStopsTheRunWithTheirTroubleAndTheOutputProvenOff(
      String changed, String trouble) throws Exception {
    String journal = stoppedFor("frame = " + changed + " if CHANGED else frame", trouble);
    assertTrue(journal.contains("not made of frames of 98320 bytes"), "it is in the journal");
  }

  /** One frame in three seconds, where frames must not be older than two. */
  @Test
  void aCameraThatBecomesTooSlowStopsTheRunWithTheOutputProvenOff() throws Exception {
    String frames = "if CHANGED and n % 75:\n        continue";
    String journal = stoppedFor(frames, "");
    assertTrue(journal.contains("no new camera frame"), "it is in the journal");
  }

  /**
   * A run whose driver changes what it sends in mid-run, and that stops for want of frames.
   *
   * @param perFrame CHANGED is whether the change has come
   * @param trouble said of the camera by then; empty when it need not be lost
   * @return the journal
   */
  private String stoppedFor(String perFrame, String trouble) throws Exception {
    assumeTrue(Files.isExecutable(PYTHON), "no Python here");
    try (ServedBench bench = ServedBench.start(folder)) {
      Path marker = folder.resolve("changed");
      Path driver =
          bench.cameraDriverInPython(
              PYTHON,
              "import os\n    " + perFrame.replace("CHANGED", "os.path.exists('" + marker + "')"));
      RailglowProcess hunt =
          bench.hunt(
              bench.benchWithCameraAt("exec:" + driver), bench.sequence("1 V", "500 mA", 30, "no"));
      hunt.awaitLine("^cycle [1-9]", 40);
      Files.createFile(marker);
      if (!trouble.isEmpty()) {
        hunt.awaitLine("The camera was lost \\(once\\): .*" + trouble, 10);
      }
      assertEquals(4, hunt.awaitExit(40), hunt.output());
      String said = hunt.output().replaceAll("\\s+", " ");
      assertTrue(Pattern.compile("no new camera frame for 2\\.\\d+ s").matcher(said).find(), said);
      assertTrue(trouble.isEmpty() || said.contains("camera was lost"), said);
      assertTrue(said.contains("output proven off"), said);
      assertEquals(false, lastOutput(bench).get("on").asBoolean());
      return Files.readString(bench.run().resolve("journal.jsonl"));
    }
  }

  /** The counter says nothing of it, only the arrivals do. */
  @Test
  void aCameraThatHalvesItsRateIsToldAndTheRunGoesOnWithRightTimes() throws Exception {
    assumeTrue(Files.isExecutable(PYTHON), "no Python here");
    try (ServedBench bench = ServedBench.start(folder)) {
      Path driver =
          bench.cameraDriverInPython(
              PYTHON,
              """
              if n > 200:
                      if n % 2:
                          continue
                      frame = (100 + n // 2).to_bytes(4, "little") + frame[4:]
                  else:
                      frame = n.to_bytes(4, "little") + frame[4:]""");
      RailglowProcess hunt =
          bench.hunt(
              bench.benchWithCameraAt("exec:" + driver), bench.sequence("1 V", "500 mA", 12, "no"));
      hunt.awaitLine("The camera gives 12\\.\\d+ frames a second now, where 25\\.00 were", 60);
      assertEquals(0, hunt.awaitExit(60), hunt.output());
      assertTrue(hunt.output().contains("C37"), hunt.output());
      String journal = Files.readString(bench.run().resolve("journal.jsonl"));
      assertTrue(journal.contains("frames a second now"), "it is in the journal");
    }
  }

  private static JsonNode lastOutput(ServedBench bench) throws Exception {
    List<JsonNode> output =
        bench.truth().stream().filter(e -> HuntOverWiresIT.is(e, "output")).toList();
    return output.get(output.size() - 1);
  }

  private static void killDriverOf(RailglowProcess hunt) {
    ProcessHandle.of(hunt.pid())
        .orElseThrow()
        .children()
        .filter(child -> child.info().command().orElse("").contains("socat"))
        .forEach(ProcessHandle::destroyForcibly);
  }
}
