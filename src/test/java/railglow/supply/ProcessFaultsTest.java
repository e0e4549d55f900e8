package railglow.supply;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import railglow.journal.Entry;
import railglow.journal.Journal;
import railglow.journal.JournalReader;
import railglow.journal.RunFolder;

/**
 * What goes wrong with the program itself: a whole hunt in another process against the simulated
 * bench, and a signal or a lack at a moment when the output is on. With {@code -Dfault.table=FILE}
 * the results are written into the table.
 */
@Tag("slow")
@EnabledOnOs(OS.LINUX)
class ProcessFaultsTest {
  private static final List<String> ROWS = new ArrayList<>();
  @TempDir Path folder;
  private ChildHunt hunt;

  @BeforeEach
  void bench() throws IOException {
    hunt = new ChildHunt(folder);
  }

  @AfterEach
  void end() {
    hunt.close();
  }

  private void row(String fault, double offMillis, int exitCode, String told) {
    ROWS.add(
        String.format(
            Locale.ROOT,
            "| %s | %s | %s | %s | %s | %d | %s |",
            fault,
            cause(told),
            Double.isNaN(offMillis) ? "-" : String.format(Locale.ROOT, "%.0f ms", offMillis),
            told.contains("output proven off")
                ? "PROVEN_OFF"
                : told.contains("NOT PROVEN OFF") ? "UNKNOWN" : "-",
            hunt.outputIsOn() ? "on" : "off",
            exitCode,
            told.replace("|", "/").replace(folder.toString(), "FOLDER")));
  }

  /** As the program's last sentence says it. */
  private static String cause(String told) {
    Matcher said = Pattern.compile("^Stopped +([a-z ]+),").matcher(told);
    if (said.find()) {
      return said.group(1).toUpperCase(Locale.ROOT).replace(' ', '_');
    }
    return told.startsWith("Ended") ? "PROGRAMME_FINISHED" : "-";
  }

  @AfterAll
  static void writeTable() throws IOException {
    FaultTable.write("process", ROWS);
  }

  @Test
  void killedOutrightTheCompanionDrivesOff() throws Exception {
    hunt.start();
    hunt.awaitOn();

    hunt.signal("KILL");
    double off = hunt.millisToOff(5);

    assertTrue(off < 1500, off + " ms");
    row("kill -9 in an ON half", off, hunt.exitCode(10), "nothing: the program is dead");
  }

  @Test
  void pausedTheCompanionDrivesOffAndResumedTheProgramEndsInOrder() throws Exception {
    hunt.start();
    hunt.awaitOn();

    hunt.signal("STOP");
    double off = hunt.millisToOff(8);
    Thread.sleep(1000);
    assertFalse(hunt.outputIsOn());
    hunt.signal("CONT");
    int code = hunt.exitCode(30);

    assertEquals(4, code, hunt.output());
    assertTrue(off < 4000, off + " ms");
    assertFalse(hunt.outputIsOn());
    row("controller paused (SIGSTOP), resumed later", off, code, hunt.lineWith("Stopped"));
  }

  @Test
  void killedOutrightOnATerminalTheCompanionTakesTheFreedPort() throws Exception {
    onTerminal();

    hunt.signal("KILL");
    double off = hunt.millisToOff(6);

    row("kill -9 in an ON half, serial", off, hunt.exitCode(10), "nothing: the program is dead");
  }

  @Test
  void pausedOnATerminalTheOutputGoesOffAllTheSame() throws Exception {
    onTerminal();

    hunt.signal("STOP");
    double off = hunt.millisToOff(8);
    Thread.sleep(1000);
    assertFalse(hunt.outputIsOn());
    hunt.signal("CONT");
    int code = hunt.exitCode(30);

    assertFalse(hunt.outputIsOn());
    String told = code == 137 ? "nothing: the companion ended it" : hunt.lineWith("Stopped");
    row("controller paused (SIGSTOP), serial", off, code, told);
  }

  private void onTerminal() throws Exception {
    Assumptions.assumeTrue(Files.isExecutable(Path.of("/usr/bin/socat")), "socat is not installed");
    hunt.close();
    hunt = ChildHunt.onTerminal(folder);
    hunt.start();
    hunt.awaitOn();
  }

  @Test
  void sigtermEndsInOrder() throws Exception {
    signalled("SIGTERM", "TERM");
  }

  @Test
  void aClosedTerminalEndsInOrder() throws Exception {
    signalled("SIGHUP", "HUP");
  }

  @Test
  void aSecondCtrlCChangesNothing() throws Exception {
    hunt.start();
    hunt.awaitOn();

    hunt.signal("INT");
    Thread.sleep(30);
    hunt.signal("INT");
    double off = hunt.millisToOff(5);
    int code = hunt.exitCode(30);

    assertEquals(130, code, hunt.output());
    row("SIGINT twice", off, code, hunt.lineWith("Stopped"));
  }

  private void signalled(String name, String signal) throws Exception {
    hunt.start();
    hunt.awaitOn();

    hunt.signal(signal);
    double off = hunt.millisToOff(5);
    int code = hunt.exitCode(30);

    assertEquals(130, code, hunt.output());
    row(name, off, code, hunt.lineWith("Stopped"));
  }

  @Test
  void aFullDiskStopsTheRunWithTheOutputOff() throws Exception {
    hunt.withFileSizeLimitKibibytes(6_000).start();

    hunt.awaitOn();
    int code = hunt.exitCode(60);

    assertEquals(4, code, hunt.output());
    assertFalse(hunt.outputIsOn());
    row("disk full in mid-run", Double.NaN, code, hunt.lineWith("Stopped"));
  }

  @Test
  void aRemovedRunFolderStopsTheRun() throws Exception {
    hunt.start();
    hunt.awaitOn();

    removeRuns();
    int code = hunt.exitCode(90);

    assertEquals(4, code, hunt.output());
    assertFalse(hunt.outputIsOn());
    row("journal folder removed in mid-run", Double.NaN, code, hunt.lineWith("Stopped"));
  }

  private void removeRuns() throws IOException {
    try (Stream<Path> files = Files.walk(folder.resolve("runs"))) {
      for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
        Files.deleteIfExists(file);
      }
    }
  }

  @Test
  void anExhaustedHeapLeavesTheOutputOff() throws Exception {
    hunt.withHeapMebibytes(20).start();

    int code = hunt.exitCode(90);
    double off = hunt.outputIsOn() ? hunt.millisToOff(5) : 0;

    assertTrue(code != 0, hunt.output());
    assertFalse(hunt.outputIsOn());
    row("heap exhausted", off, code, hunt.lineWith("Stopped"));
  }

  @Test
  void theWallClockSetBackAnHourInMidRunChangesNothing() throws Exception {
    Assumptions.assumeTrue(
        WallClock.canBeMoved(), "gcc is not installed: the clock can't be moved");
    Path when = folder.resolve("now");
    Instant before = Instant.now();
    hunt.withEnvironment("LD_PRELOAD", WallClock.library(folder).toString())
        .withEnvironment("WALL_CLOCK_BACK_WHEN", when.toString())
        .withMain(ClockWitnessMain.class, when.toString())
        .withOptions("--cycles-at-most", "6")
        .start();
    hunt.awaitOn();
    Files.createFile(when);
    int code = hunt.exitCode(120);
    Instant after = Instant.now();

    String seen = hunt.lineWith("the wall clock reads").replaceAll(".* ", "");
    assertTrue(
        Instant.parse(seen).isBefore(before.minusSeconds(3000)), "it was not moved: " + seen);
    assertEquals(0, code, hunt.output());
    assertFalse(hunt.outputIsOn());
    Journal journal = JournalReader.read(new RunFolder(theRun()));
    Instant started = journal.header().started();
    assertTrue(started.isAfter(before) && started.isBefore(after), started.toString());
    long last = Long.MIN_VALUE;
    for (Entry.Reading reading : journal.of(Entry.Reading.class).toList()) {
      assertTrue(reading.nanos() > last, "the times of readings never go back");
      last = reading.nanos();
    }
    long lasted = journal.closed().orElseThrow().nanos() - journal.header().startNanos();
    assertTrue(lasted > 0 && lasted < 120_000_000_000L, lasted + " ns");
    row("wall clock set back an hour in mid-run", Double.NaN, code, hunt.lineWith("Ended"));
  }

  private Path theRun() throws IOException {
    try (Stream<Path> runs = Files.list(folder.resolve("runs"))) {
      return runs.filter(Files::isDirectory).findFirst().orElseThrow();
    }
  }

  @Test
  void withoutAnyMemoryLeftAndNoCompanionTheProgramItselfSendsOff() throws Exception {
    Path when = folder.resolve("now");
    hunt.alone().withMain(ExhaustedMain.class, when.toString()).start();
    hunt.awaitOn();
    Files.createFile(when);
    hunt.faultNow();
    double off = hunt.millisToOff(15);
    int code = hunt.exitCode(300);
    assertFalse(hunt.outputIsOn());
    assertTrue(code == 4 || code == 5, code + ": " + hunt.output());
    row("every byte of memory taken, no companion", off, code, hunt.lineWith("memory"));
  }

  @Test
  void aSecondControllerIsRefusedByName() throws Exception {
    hunt.start();
    hunt.awaitOn();

    try (ChildHunt second = hunt.second()) {
      second.start();
      int code = second.exitCode(30);

      assertEquals(2, code, second.output());
      String told = second.lineWith("already driven by process " + hunt.pid());
      row("a second controller on the same supply", Double.NaN, code, told);
      assertFalse(told.isEmpty(), second.output());
    }
    hunt.signal("TERM");
    assertEquals(130, hunt.exitCode(30));
  }
}
