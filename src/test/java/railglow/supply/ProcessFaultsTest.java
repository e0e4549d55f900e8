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
    String safe = told.replace(folder.toString(), "FOLDER");
    ROWS.add(FaultTable.processRow(fault, offMillis, hunt.outputIsOn(), exitCode, safe));
  }

  @AfterAll
  static void writeTable() throws IOException {
    FaultTable.write("process", ROWS);
  }

  @Test
  void killedOutrightTheCompanionDrivesOff() throws Exception {
    startedAndOn();

    hunt.signal("KILL");
    double off = hunt.millisToOff(5);

    assertTrue(off < 1500, off + " ms");
    row("kill -9 in an ON half", off, hunt.exitCode(10), companionSays("without a goodbye"));
  }

  @Test
  void pausedTheCompanionDrivesOffAndResumedTheProgramEndsInOrder() throws Exception {
    startedAndOn();

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

    int code = hunt.exitCode(10);
    row("kill -9 in an ON half, serial", off, code, companionSays("without a goodbye"));
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
    String told =
        code == 137 ? companionSays("stood still, holding the line") : hunt.lineWith("Stopped");
    row("controller paused (SIGSTOP), serial", off, code, told);
  }

  /** What it says when the program can't: it may come some time after the output went off. */
  private String companionSays(String why) throws Exception {
    String said = "";
    for (int i = 0; i < 1000 && !said.contains("output proven off"); i++) {
      Thread.sleep(10);
      said = hunt.lineWith("Companion");
    }
    assertTrue(said.contains(why) && said.contains("output proven off"), hunt.output());
    return said;
  }

  private void startedAndOn() throws Exception {
    hunt.start();
    hunt.awaitOn();
  }

  private void onTerminal() throws Exception {
    Assumptions.assumeTrue(Files.isExecutable(Path.of("/usr/bin/socat")), "socat is not installed");
    hunt.close();
    hunt = ChildHunt.onTerminal(folder);
    startedAndOn();
  }

  @Test
  void sigtermEndsInOrder() throws Exception {
    startedAndOn();
    signalled("SIGTERM", "TERM");
  }

  @Test
  void aClosedTerminalEndsInOrder() throws Exception {
    startedAndOn();
    signalled("SIGHUP", "HUP");
  }

  @Test
  void aClosedTerminalEndsInOrderWithTheSupplyOnASerialLine() throws Exception {
    onTerminal();
    signalled("SIGHUP, serial", "HUP");
  }

  @Test
  void aSecondCtrlCChangesNothing() throws Exception {
    startedAndOn();

    hunt.signal("INT");
    Thread.sleep(30);
    hunt.signal("INT");
    double off = hunt.millisToOff(5);
    int code = hunt.exitCode(30);

    assertEquals(130, code, hunt.output());
    row("SIGINT twice", off, code, hunt.lineWith("Stopped"));
  }

  private void signalled(String name, String signal) throws Exception {
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
    startedAndOn();

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
    hunt.alone();
    everyByteTaken("every byte of memory taken, no companion", false);
  }

  @Test
  void withoutAnyMemoryLeftTheCompanionProvesItOff() throws Exception {
    everyByteTaken("every byte of memory taken", true);
  }

  @Test
  void withoutAnyMemoryLeftOnATerminalTheCompanionTakesTheLineAndProvesItOff() throws Exception {
    Assumptions.assumeTrue(Files.isExecutable(Path.of("/usr/bin/socat")), "socat is not installed");
    hunt.close();
    hunt = ChildHunt.onTerminal(folder);
    everyByteTaken("every byte of memory taken, serial", true);
  }

  private void everyByteTaken(String fault, boolean companion) throws Exception {
    Path when = folder.resolve("now");
    hunt.withMain(ExhaustedMain.class, when.toString()).start();
    hunt.awaitOn();
    Files.createFile(when);
    hunt.faultNow();
    double off = hunt.millisToOff(60);
    int code = hunt.exitCode(300);
    assertFalse(hunt.outputIsOn());
    String told = hunt.lineWith("memory");
    if (companion) {
      told = (told + " " + companionSays("")).strip();
    } else {
      assertTrue(code == 4 || code == 5, code + ": " + hunt.output());
    }
    row(fault, off, code, told);
  }

  @Test
  void aSecondControllerIsRefusedByName() throws Exception {
    startedAndOn();

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
