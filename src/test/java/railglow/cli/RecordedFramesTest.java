package railglow.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;
import static railglow.cli.Typed.railglow;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Frames of real cameras, recorded by others, imported and replayed as a user does. Their truth is
 * stated beside them; where the recordings are not at hand the tests are skipped.
 */
class RecordedFramesTest {
  @TempDir Path folder;
  private Path recordings;

  @BeforeEach
  void findRecordings() {
    recordings = Path.of(System.getProperty("railglow.recordings", "../shared/thermal"));
    assumeTrue(Files.isDirectory(recordings), "no recordings at " + recordings);
  }

  private JsonNode imported(String name, Path edges, String... more) throws IOException {
    Path times = recordings.resolve(name + ".frames.csv");
    String[] words =
        Stream.concat(
                Stream.of(
                    "import",
                    "--frames",
                    recordings.resolve(name + ".npy").toString(),
                    "--edges",
                    edges.toString(),
                    "--runs",
                    folder.resolve("runs").toString()),
                Stream.concat(
                    Files.exists(times)
                        ? Stream.of("--times", times.toString())
                        : Stream.of("--frame-rate", "8 Hz"),
                    Stream.of(more)))
            .toArray(String[]::new);
    railglow(0, words);
    Path run;
    try (Stream<Path> runs = Files.list(folder.resolve("runs"))) {
      run = runs.findFirst().orElseThrow();
    }
    railglow(0, "replay", "--verify", run.toString()); // bit-identical
    return new ObjectMapper().readTree(run.resolve("findings.json").toFile());
  }

  @Test
  void theAddedSourceIsFoundWhereItWasAdded() throws IOException {
    String name = "a1_added_source_489";
    JsonNode findings =
        imported(name, recordings.resolve(name + ".edges.csv"), "--camera-time-constant", "950 ms");
    assertEquals("HEAT_FOUND", findings.get("verdict").asText());
    JsonNode source = findings.get("sources").get(0);
    assertEquals(61.7, source.get("column").asDouble(), 0.5);
    assertEquals(22.3, source.get("row").asDouble(), 0.5);
    assertTrue(source.get("familyWiseP").asDouble() < 1e-4, source.toString());
    assertEquals("counts", findings.get("unit").asText());
  }

  @Test
  void theSameFramesWithoutTheSourceShowNothing() throws IOException {
    String name = "a_lepton3_static_489";
    JsonNode findings =
        imported(name, recordings.resolve(name + ".edges.csv"), "--camera-time-constant", "950 ms");
    assertEquals("NOTHING_FOUND", findings.get("verdict").asText());
    assertTrue(findings.get("upperLimit").asDouble() > 0, "and says what would have been seen");
  }

  /** Pulses that never were: what still scenes do by themselves must not follow them. */
  @ParameterizedTest
  @CsvSource({"b_lepton3_flat_102, 2, 5", "g_mlx90640_heating_400, 6, 8"})
  void nothingIsFoundUnderInventedEdges(String name, double period, int pulses) throws IOException {
    JsonNode findings = underInventedEdges(name, period, pulses);
    assertEquals("NOTHING_FOUND", findings.get("verdict").asText(), findings.toString());
  }

  /** A camera just started and one with faulty pixels: read whole, faults counted. */
  @ParameterizedTest
  @CsvSource({"f_lepton3x_startup_ck_82, 2, 4, 0", "h_mlx90640_faulty_310, 6, 6, 4"})
  void restlessRecordingsAreReadAndTheirDamagedFramesCounted(
      String name, double period, int pulses, int damaged) throws IOException {
    JsonNode findings = underInventedEdges(name, period, pulses);
    assertTrue(findings.get("cyclesUsed").asInt() >= pulses - 2, findings.toString());
    assertEquals(damaged, findings.get("framesByMark").path("damaged").asInt(0));
  }

  private JsonNode underInventedEdges(String name, double period, int pulses) throws IOException {
    StringBuilder edges = new StringBuilder("time_s,state\n0.0,OFF\n");
    for (int k = 0; k < pulses; k++) {
      edges.append(0.5 + k * period).append(",ON\n");
      edges.append(0.5 + (k + 0.5) * period).append(",OFF\n");
    }
    Path file = Files.writeString(folder.resolve("edges.csv"), edges);
    return imported(name, file, "--camera-time-constant", "500 ms");
  }
}
