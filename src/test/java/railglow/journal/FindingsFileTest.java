package railglow.journal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import railglow.thermal.HeatSource;

class FindingsFileTest {
  @TempDir Path temporary;

  private static Findings with(
      Findings f, List<HeatSource> sources, double onVolts, Map<String, Integer> marks) {
    return new Findings(
        f.verdict(),
        f.headline(),
        f.nextStep(),
        sources,
        f.suspects(),
        f.paths(),
        f.cyclesUsed(),
        f.cyclesRejected(),
        marks,
        f.unit(),
        f.upperLimit(),
        f.upperLimitMilliwatts(),
        onVolts,
        f.onAmperes(),
        f.onWatts(),
        f.railOhms(),
        f.power(),
        f.trueRises());
  }

  @Test
  void findingsFromBeforeTrueRisesWereKeptHaveNone() throws IOException {
    Path file = temporary.resolve("findings.json");
    FindingsFile.write(file, SampleRun.findings());
    assertEquals(1, FindingsFile.read(file).trueRises().size());
    String text = java.nio.file.Files.readString(file);
    int from = text.indexOf(",\n  \"trueRises\"");
    java.nio.file.Files.writeString(file, text.substring(0, from) + "\n}");
    assertEquals(List.of(), FindingsFile.read(file).trueRises());
  }

  @Test
  void findingsComeBackWithoutADifference() throws IOException {
    Path file = temporary.resolve("findings.json");
    FindingsFile.write(file, SampleRun.findings());
    assertEquals(List.of(), FindingsFile.difference(SampleRun.findings(), FindingsFile.read(file)));
    assertEquals(SampleRun.findings(), FindingsFile.read(file));
  }

  @Test
  void theSmallestChangeIsFoundAndNamed() {
    Findings first = SampleRun.findings();
    HeatSource source = first.sources().get(0);
    HeatSource moved = SampleRun.source(Math.nextUp(source.column()), source.row(), 1.6);
    assertEquals(
        List.of("sources[0].column is 14.25 in the first and 14.250000000000002 in the second"),
        FindingsFile.difference(
            first, with(first, List.of(moved), first.onVolts(), first.framesByMark())));
    assertEquals(
        List.of("onVolts is 1.18 in the first and \"NaN\" in the second"),
        FindingsFile.difference(
            first, with(first, first.sources(), Double.NaN, first.framesByMark())));
    assertEquals(
        List.of("framesByMark.FROZEN is 7 in the first and not there in the second"),
        FindingsFile.difference(
            first, with(first, first.sources(), 1.18, Map.of("TRANSITION", 36))));
    assertEquals(
        1,
        FindingsFile.difference(first, with(first, List.of(), 1.18, first.framesByMark())).size());
  }

  @Test
  void zeroAndMinusZeroDiffer() {
    Findings first = SampleRun.findings();
    assertEquals(
        1,
        FindingsFile.difference(
                with(first, List.of(), 0.0, Map.of()), with(first, List.of(), -0.0, Map.of()))
            .size());
  }

  @Test
  void aFileOfAnotherKindIsRefused() throws IOException {
    Path file = temporary.resolve("findings.json");
    Files.writeString(file, "{\"kind\":\"frames\"}");
    JournalException e = assertThrows(JournalException.class, () -> FindingsFile.read(file));
    assertTrue(e.getMessage().contains("does not hold findings"), e.getMessage());
  }

  @Test
  void aFieldThatIsNotThereIsAnErrorAndNeverAZero() throws IOException {
    Path file = temporary.resolve("findings.json");
    FindingsFile.write(file, SampleRun.findings());
    Files.writeString(file, Files.readString(file).replace("\"onAmperes\"", "\"onAmps\""));
    JournalException e = assertThrows(JournalException.class, () -> FindingsFile.read(file));
    assertTrue(e.getMessage().contains("onAmperes"), e.getMessage());
  }

  @Test
  void aNewerFormatIsRefused() throws IOException {
    Path file = temporary.resolve("findings.json");
    FindingsFile.write(file, SampleRun.findings());
    Files.writeString(
        file, Files.readString(file).replace("formatVersion\" : 1", "formatVersion\" : 9"));
    JournalException e = assertThrows(JournalException.class, () -> FindingsFile.read(file));
    assertTrue(e.getMessage().contains("format 9"), e.getMessage());
  }
}
