package railglow.process;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Hands-free sessions over real wires, with a simulated hand. */
class TouchIT {
  @TempDir Path folder;

  @Test
  void aHandTouchesSlipsBouncesAndLiftsAndEachPointHasItsOwnRunAndTheOutputEndsOff()
      throws Exception {
    try (ServedBench bench =
        ServedBench.start(
            folder,
            "--hand",
            "touch:C9@2s..12s",
            "--hand",
            "slip:C9=300mohm@12s..14.5s",
            "--hand",
            "touch:C9@14.5s..24s",
            "--hand",
            "bounce:C40@36s..44s",
            "--hand",
            "touch:C40=1.5ohm@44s..64s")) {
      RailglowProcess touch =
          touch(bench, bench.sequence("1 V", "500 mA", 40, "no"), "--touches", "2");
      assertEquals(0, touch.awaitExit(120), touch.output());
      String said = touch.output();
      assertTrue(said.contains("the contact does not settle: its resistance swings from"), said);
      assertTrue(said.contains("does not count: the contact swung between"), said);
      assertTrue(said.contains("the contact is lost"), said);
      assertTrue(said.contains("near: keep still") && said.contains("far: keep still"), said);
      assertTrue(said.contains("Spoilt     far:"), said);
      assertEquals(2, runsWithFindings(), said);
      RailglowProcess replay =
          RailglowProcess.start("replay", "--verify", runAt("near").toString());
      assertEquals(0, replay.awaitExit(60), replay.output());
      assertNeverAboveSensingOutsideRuns(bench);
    }
  }

  @Test
  void eachTouchIsNamedByTheListAKeyOrAWordAndTheListIsComparedAtTheEnd() throws Exception {
    try (ServedBench bench =
        ServedBench.start(
            folder,
            "--hand",
            "touch:C9@2s..26s",
            "--hand",
            "touch:C41=1.5ohm@38s..60s",
            "--hand",
            "touch:C37@74s..100s")) {
      RailglowProcess touch =
          touch(
              bench,
              bench.sequence("1 V", "500 mA", 5, "no"),
              "--labels",
              "near,middle,far",
              "--touches",
              "3",
              "--live",
              "--live-port",
              "0",
              "--silent");
      String address = touch.awaitLine("^Live page +(http\\S+)", 40).group(1);
      touch.awaitLine("^Waiting +for touch 1, near", 40);
      assertEquals(0, sounds(address).get("volume").asDouble(), "silent on the page too");
      touch.awaitLine("^Waiting +for touch 2, middle", 60);
      touch.type("3\n");
      touch.awaitLine("^Next +far", 10);
      touch.awaitLine("^Waiting +for touch 3, middle", 60);
      touch.type("bulk cap\n");
      touch.awaitLine("^Next +bulk cap", 10);
      assertEquals(0, touch.awaitExit(120), touch.output());
      String said = touch.output();
      assertFalse(said.contains("Sound  "), said);
      String table = said.substring(said.indexOf("\nTouches\n"));
      assertTrue(table.matches("(?s).*\n  1  near +\\S+ m?V .*"), table);
      assertTrue(table.matches("(?s).*\n  2  far +\\S+ m?V .*\\+1\\.\\d+ ohm .*"), table);
      assertTrue(table.matches("(?s).*\n  3  bulk cap +\\S+ m?V .*"), table);
      Matcher best = Pattern.compile("Best +(near|bulk cap) gave most power").matcher(table);
      assertTrue(best.find(), table);
      assertTrue(table.contains("Spoilt     far: 1."), table);
      assertTrue(
          table.contains("less power to the source than at " + best.group(1)), "than at the best");
      assertTrue(Files.exists(runAt("bulk_cap").resolve("report.html")));
      assertTrue(Files.readString(runAt("touches").resolve("touches.txt")).contains("Spoilt"));
    }
  }

  private static JsonNode sounds(String page) throws Exception {
    HttpResponse<String> answer =
        HttpClient.newHttpClient()
            .send(
                HttpRequest.newBuilder(URI.create(page.replace("/?", "/sounds?"))).build(),
                HttpResponse.BodyHandlers.ofString());
    return new ObjectMapper().readTree(answer.body());
  }

  @Test
  void aSimulatedHandThatHasDoneAllEndsTheSessionInOrder() throws Exception {
    RailglowProcess touch =
        RailglowProcess.start(
            "touch",
            "--simulated",
            "--silent",
            "--no-keys",
            "--hand",
            "touch:C9@500ms..1500ms",
            "--runs",
            folder.resolve("runs").toString());
    assertEquals(0, touch.awaitExit(90), touch.output());
    assertTrue(touch.output().contains("the simulated hand has done all"), touch.output());
  }

  @Test
  void theEndOfTheInputEndsTheWaitInOrder() throws Exception {
    try (ServedBench bench = ServedBench.start(folder, "--hand", "touch:C9@500s..501s")) {
      RailglowProcess touch = touch(bench, bench.sequence("1 V", "500 mA", 5));
      touch.awaitLine("^Waiting ", 40);
      touch.endInput();
      assertEquals(0, touch.awaitExit(40), touch.output());
      assertSaysProvenOff(touch);
    }
  }

  @Test
  void ctrlCWhileSensingEndsWithExit130() throws Exception {
    try (ServedBench bench = ServedBench.start(folder, "--hand", "touch:C9@500s..501s")) {
      RailglowProcess touch = touch(bench, bench.sequence("1 V", "500 mA", 5));
      touch.awaitLine("^Waiting ", 40);
      touch.interrupt();
      assertEquals(130, touch.awaitExit(40), touch.output());
      assertSaysProvenOff(touch);
    }
  }

  @Test
  void aTripOfTheSupplyEndsTheWholeSessionWithExitFour() throws Exception {
    try (ServedBench bench =
        ServedBench.start(
            folder, "--hand", "touch:C9@4s..300s", "--fault", "overcurrent-trip@20s")) {
      RailglowProcess touch = touch(bench, bench.sequence("1 V", "500 mA", 60, "no"));
      assertEquals(4, touch.awaitExit(90), touch.output());
      assertSaysProvenOff(touch);
      assertTrue(touch.output().contains("Sound      stopped by a limit"), touch.output());
    }
  }

  private RailglowProcess touch(ServedBench bench, Path sequence, String... more) throws Exception {
    List<String> words = new ArrayList<>(List.of(more));
    if (!words.contains("--labels")) {
      words.addAll(List.of("--labels", "near,far"));
    }
    return bench.command("touch", sequence, words);
  }

  /** The words may stand on two lines. */
  private static void assertSaysProvenOff(RailglowProcess touch) {
    String words = touch.output().replaceAll("\\s+", " ");
    assertTrue(words.contains("output proven off"), touch.output());
  }

  private Path runAt(String label) throws Exception {
    try (Stream<Path> folders = Files.list(folder.resolve("runs"))) {
      return folders
          .filter(run -> run.getFileName().toString().contains(label))
          .findFirst()
          .orElseThrow();
    }
  }

  private long runsWithFindings() throws Exception {
    try (Stream<Path> folders = Files.list(folder.resolve("runs"))) {
      return folders.filter(run -> Files.exists(run.resolve("findings.json"))).count();
    }
  }

  /**
   * Every switching on is at the sensing level or, in a run, at the sequence's; the last is off.
   */
  private static void assertNeverAboveSensingOutsideRuns(ServedBench bench) throws Exception {
    List<JsonNode> output =
        bench.truth().stream().filter(e -> HuntOverWiresIT.is(e, "output")).toList();
    assertFalse(output.isEmpty());
    JsonNode first = output.stream().filter(e -> e.get("on").asBoolean()).findFirst().orElseThrow();
    assertEquals(0.05, first.get("setVolts").asDouble(), 1e-9, first.toString());
    long sensed =
        output.stream()
            .filter(e -> e.get("on").asBoolean() && e.get("setVolts").asDouble() <= 0.05)
            .count();
    assertEquals(2, sensed, "one sensing before each touch: " + output);
    assertFalse(output.get(output.size() - 1).get("on").asBoolean());
  }
}
