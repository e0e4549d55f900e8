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
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What can't be logged is refused before anything is opened. */
class LogCommandTest {
  @TempDir Path folder;
  private final Typed typed = Typed.together();

  private int log(String... options) {
    List<String> words =
        new ArrayList<>(List.of("log", "--simulated", "--runs", folder.resolve("runs").toString()));
    words.addAll(List.of(options));
    return typed.run(words.toArray(new String[0]));
  }

  private String text() {
    return typed.onOneLine();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "--level|1 V|needs both --level and --current-limit",
        "--duration|0.1 s|--duration is 0.1 s; allowed is 1 s to 360000 s",
        "--lead-in|0.1 s|--lead-in is 0.1 s; allowed is 0.5 s to 600 s",
        "--wait|10 s|--wait is for --start-on, which is not given",
        "--place|X99|place 'X99' is no part of the board",
        "--place|p=point 400 px, 3 px|not in the picture",
        "--start-on|C37 above 30 degC|watches 'C37', which is neither",
        "--mark-on|current jumps|the condition 'current jumps' is not known"
      })
  void badUseIsSaidInOneSentence(String option, String value, String sentence) {
    assertEquals(2, log(option, value), text());
    assertTrue(text().contains(sentence), text());
    assertFalse(Files.exists(folder.resolve("runs")), "nothing was begun");
  }

  @Test
  void whoDrivesTheSupplyMustBeClear() {
    assertEquals(2, log("--level", "1 V", "--current-limit", "1 A", "--watch-supply"), text());
    assertTrue(text().contains("who drives the supply?"), text());
  }

  @Test
  void anInjectionAboveALimitIsRefusedAsForAnyRun() {
    assertEquals(3, log("--level", "3 V", "--current-limit", "300 mA"), text());
    assertTrue(text().contains("2.6 V"), text());
    assertFalse(Files.exists(folder.resolve("runs")), "nothing was begun");
  }

  @Test
  void twoPlacesOfOneNameAreRefused() {
    assertEquals(2, log("--place", "C37", "--place", "c37"), text());
    assertTrue(text().contains("two places called 'C37'"), text());
  }
}
