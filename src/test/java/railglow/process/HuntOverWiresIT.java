package railglow.process;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The packaged jar hunts on a simulated bench in another process, over real wires. */
class HuntOverWiresIT {
  @TempDir Path folder;

  @Test
  void aLeakyCapacitorIsNamedAndTheReplayGivesTheSameBits() throws Exception {
    try (ServedBench bench = ServedBench.start(folder)) {
      RailglowProcess hunt = bench.hunt(bench.sequence("1 V", "500 mA", 30));
      assertEquals(0, hunt.awaitExit(120), hunt.output());
      assertNamesC37(bench);
      assertTrue(Files.size(bench.run().resolve("report.html")) > 10_000);
      assertTrue(
          Files.readString(bench.run().resolve("transcript.txt")).contains("OUTP ON"),
          "the transcript holds what was sent");
      assertEquals(
          0, RailglowProcess.start("replay", "--verify", bench.run().toString()).awaitExit(60));
      assertTrueOutputEndedOff(bench);
    }
  }

  /**
   * The serial line and the USB device file, each with one of the two families of supplies, which
   * show constant voltage and current in different registers, and that family's shipped descriptor.
   */
  @ParameterizedTest
  @CsvSource({"serial, operation", "usbtmc, questionable"})
  void theSameOverOtherLinksWithASupplyOfEachFamilyAndItsShippedDescriptor(
      String link, String register) throws Exception {
    assumeTrue(Files.isExecutable(Path.of("/usr/bin/socat")), "socat is not installed");
    Path device = folder.resolve("supply-device");
    try (ServedBench bench =
        ServedBench.start(folder, "--terminal", device.toString(), "--regulation-in", register)) {
      Path descriptor = Path.of("instruments", "supply-scpi-regulation-in-" + register + ".yaml");
      Path file = bench.benchWithSupply(descriptor, link + ":" + device);
      RailglowProcess hunt = bench.hunt(file, bench.sequence("1 V", "500 mA", 30));
      assertEquals(0, hunt.awaitExit(120), hunt.output());
      assertTrue(hunt.output().contains(link + ":" + device), hunt.output());
      assertNamesC37(bench);
      assertTrue(
          Files.readString(bench.run().resolve("trace.csv")).contains("CONSTANT_VOLTAGE"),
          "the regulation was read in its own register");
      assertTrueOutputEndedOff(bench);
    }
  }

  /** The same bit means constant current in one family and an over-voltage trip in the other. */
  @Test
  void theDescriptorOfTheOtherFamilyEndsTheRunWithTheOutputOff() throws Exception {
    try (ServedBench bench = ServedBench.start(folder, "--regulation-in", "questionable")) {
      Path descriptor = Path.of("instruments", "supply-scpi-regulation-in-operation.yaml");
      Path file = bench.benchWithSupply(descriptor, bench.supplyAddress());
      RailglowProcess hunt = bench.hunt(file, bench.sequence("1 V", "500 mA", 30));
      assertEquals(4, hunt.awaitExit(120), hunt.output());
      assertTrue(hunt.output().contains("supply tripped"), hunt.output());
      assertTrueOutputIsOff(bench);
    }
  }

  @Test
  void aDeadShortIsFoundWithTheCurrentLimitedByTheSupply() throws Exception {
    try (ServedBench bench = ServedBench.start(folder, "--scenario", "dead-short")) {
      RailglowProcess hunt = bench.hunt(bench.sequence("500 mV", "1 A", 15, "no"));
      assertEquals(0, hunt.awaitExit(150), hunt.output());
      JsonNode findings = bench.findings();
      assertEquals("HEAT_FOUND", findings.get("verdict").asText(), hunt.output());
      JsonNode source =
          bench.truth().stream().filter(e -> is(e, "source")).findFirst().orElseThrow();
      assertTrue(nearest(findings, source) < 12, "none in the same large part: " + findings);
      assertEquals(0.02, findings.get("railOhms").asDouble(), 0.005);
    }
  }

  @Test
  void onAHealthyBoardNothingIsFoundAndTheLimitOfWhatWouldHaveBeenSeenIsSaid() throws Exception {
    try (ServedBench bench = ServedBench.start(folder, "--scenario", "healthy")) {
      RailglowProcess hunt = bench.hunt(bench.sequence("1 V", "500 mA", 10));
      assertEquals(0, hunt.awaitExit(90), hunt.output());
      JsonNode findings = bench.findings();
      assertEquals("NOTHING_FOUND", findings.get("verdict").asText(), hunt.output());
      double limit = findings.get("upperLimit").asDouble();
      assertTrue(limit > 0.001 && limit < 0.2, "an upper limit of " + limit + " K");
      assertTrue(hunt.output().contains("would have been seen"), hunt.output());
    }
  }

  /** Pixels from the true source to the nearest one found; the clip's own heat is found too. */
  private static double nearest(JsonNode findings, JsonNode source) {
    double nearest = Double.POSITIVE_INFINITY;
    for (JsonNode found : findings.get("sources")) {
      double columns = found.get("column").asDouble() - source.get("column").asDouble();
      double rows = found.get("row").asDouble() - source.get("row").asDouble();
      nearest = Math.min(nearest, Math.hypot(columns, rows));
    }
    return nearest;
  }

  private static void assertNamesC37(ServedBench bench) throws Exception {
    JsonNode findings = bench.findings();
    assertEquals("HEAT_FOUND", findings.get("verdict").asText());
    assertEquals("C37", findings.get("suspects").get(0).get("part").asText());
    assertEquals(6.8, findings.get("railOhms").asDouble(), 0.15);
  }

  private static void assertTrueOutputEndedOff(ServedBench bench) throws Exception {
    List<JsonNode> output = bench.truth().stream().filter(e -> is(e, "output")).toList();
    assertTrue(output.size() >= 8, "the output was pulsed: " + output.size() + " changes");
    assertEndsOff(output);
  }

  private static void assertTrueOutputIsOff(ServedBench bench) throws Exception {
    assertEndsOff(bench.truth().stream().filter(e -> is(e, "output")).toList());
  }

  private static void assertEndsOff(List<JsonNode> output) {
    JsonNode last = output.get(output.size() - 1);
    assertEquals(false, last.get("on").asBoolean(), last.toString());
  }

  static boolean is(JsonNode event, String kind) {
    return event.get("kind").asText().equals(kind);
  }
}
