package railglow.supply;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The table of faults that is shipped holds a result for each fault there must be an answer to. */
class FaultMatrixIsWholeTest {
  private static final List<String> FAULTS =
      List.of(
          "no reply, for good",
          "late reply",
          "reply to the previous question",
          "truncated",
          "garbage",
          "1 byte at a time",
          "echo on",
          "connection dropped",
          "connection dropped and refused",
          "port vanishes",
          "supply ignores off",
          "supply resets itself",
          "reading not a number",
          "reading overflows",
          "error queue fills",
          "over-voltage trip",
          "over-current trip",
          "falls into CC unasked",
          "drops out of CC unasked",
          "current runaway in the ON half",
          "current while off",
          "voltage over set",
          "slow discharge of a big capacitor",
          "reading stale",
          "controller paused (SIGSTOP), resumed later",
          "controller paused (SIGSTOP), serial",
          "wall clock set back an hour in mid-run",
          "kill -9 in an ON half",
          "kill -9 in an ON half, serial",
          "SIGTERM",
          "SIGINT twice",
          "SIGHUP",
          "disk full in mid-run",
          "journal folder removed in mid-run",
          "heap exhausted",
          "every byte of memory taken, no companion",
          "a second controller on the same supply");

  @Test
  void everyFaultHasItsRow() throws IOException {
    List<String> rows =
        Files.readAllLines(Path.of("docs/fault-matrix.md")).stream()
            .filter(line -> line.startsWith("| "))
            .map(line -> line.substring(2, line.indexOf(" |", 1)))
            .toList();
    assertEquals(List.of(), FAULTS.stream().filter(fault -> !rows.contains(fault)).toList());
  }
}
