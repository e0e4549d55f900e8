package railglow.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import railglow.board.readings.RailReading;
import railglow.board.readings.ReadingsReader;
import railglow.journal.Journal;
import railglow.journal.JournalReader;
import railglow.journal.RunFolder;
import railglow.observed.OutputState;

/** Rails read by the supply itself, over a real socket against the simulated one. */
class MeasuredReadingIT {
  @TempDir Path folder;
  private final Typed typed = Typed.together();

  private int measure(String... more) {
    List<String> words =
        new ArrayList<>(
            List.of(
                "rails",
                "--board",
                "docs/examples/hx12/board.yaml",
                "--measure",
                "3V3",
                "--simulated",
                "--case",
                folder.resolve("case").toString(),
                "--runs",
                folder.resolve("runs").toString()));
    words.addAll(List.of(more));
    return typed.run(words.toArray(String[]::new));
  }

  private String said() {
    return typed.onOneLine();
  }

  private List<RailReading> kept() throws Exception {
    Path table = folder.resolve("case/readings.csv");
    return ReadingsReader.read("readings.csv", Files.readAllBytes(table));
  }

  private Journal record() throws Exception {
    try (var folders = Files.list(folder.resolve("runs/readings"))) {
      return JournalReader.read(new RunFolder(folders.findFirst().orElseThrow()));
    }
  }

  /** The simulated rail is 6.8 ohm by its circuit. */
  @Test
  void theRailIsReadKeptWithItsErrorAndTheOutputProvenOff() throws Exception {
    assertEquals(0, measure(), said());
    assertTrue(said().contains("Hunt first 3V3"), said());
    assertTrue(said().contains("output proven off"), said());
    assertFalse(said().contains("NOT"), said());
    RailReading reading = kept().get(0);
    assertEquals(6.8, reading.railOhms(), 2 * reading.sigmaOhms());
    assertTrue(reading.sigmaOhms() < 0.2, "known to " + reading.sigmaOhms());
    Journal record = record();
    assertTrue(record.finished());
    assertEquals(OutputState.PROVEN_OFF, record.closed().orElseThrow().output());
    assertEquals(0.6, record.header().sequence().levelVolts(), 1e-9);
    assertEquals(0.1, record.header().sequence().maxAmperes(), 1e-9);
  }

  /**
   * Shockley's diode with 1.5 ohm in series beside 45 ohm: at 0.6 V it takes most of the current.
   */
  @Test
  void aRailThatConductsLikeADiodeIsSaidToBeASemiconductorPath() throws Exception {
    assertEquals(0, measure("--scenario", "leaky-junction"), said());
    assertTrue(said().contains("3V3 depends on the level"), said());
    assertTrue(said().contains("semiconductor path"), said());
    assertTrue(said().contains("not a plain leak"), said());
    assertTrue(said().contains("output proven off"), said());
    assertEquals(2, kept().size(), "a reading for each level");
    assertTrue(kept().get(0).railOhms() > 1.3 * kept().get(1).railOhms(), kept().toString());
  }

  @Test
  void aSupplyThatGoesWrongStopsTheReadingAndNothingIsKept() {
    assertEquals(4, measure("--fault", "overcurrent-trip@3s"), said());
    assertTrue(said().contains("output proven off"), said());
    assertTrue(said().contains("it was stopped before it was done"), said());
    assertFalse(Files.exists(folder.resolve("case/readings.csv")));
  }

  @Test
  void moreThanGentleIsRefusedBeforeAnythingIsOpened() {
    assertEquals(2, measure("--level", "2 V", "--current-limit", "500 mA"), said());
    assertTrue(said().contains("at most 250 mW"), said());
    assertEquals(3, measure("--level", "3 V", "--current-limit", "50 mA"), said());
    assertTrue(said().contains("Nothing was opened"), said());
    assertEquals(2, measure("--reversed", "--level", "500 mV"), said());
    assertTrue(said().contains("protection diodes"), said());
    assertFalse(Files.exists(folder.resolve("runs")));
  }
}
