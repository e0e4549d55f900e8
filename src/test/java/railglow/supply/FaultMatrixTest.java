package railglow.supply;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;
import railglow.safety.StopCause;
import railglow.supply.FaultRun.Outcome;

/**
 * What goes wrong on the wire and in the supply, each on a real socket or pseudo-terminal against
 * the simulated supply. With {@code -Dfault.table=FILE} the results are written as a table.
 */
class FaultMatrixTest {
  @TempDir static Path folder;
  static final Set<StopCause> BY_A_BUSY_MACHINE =
      Set.of(StopCause.READINGS_STALE, StopCause.LINK_LOST, StopCause.PERMIT_LAPSED);
  private static final List<String> ROWS = new ArrayList<>();

  /** What must come of a fault. */
  private record Expected(
      String name, String scenario, String fault, Set<StopCause> causes, int exitCode) {
    Expected(String name, String fault, StopCause cause, int exitCode) {
      this(name, "hx12", fault, Set.of(cause), exitCode);
    }
  }

  private static final List<Expected> ALL =
      List.of(
          new Expected("nothing wrong", "", StopCause.PROGRAMME_FINISHED, 0),
          new Expected("no reply, for good", "no-reply@on+0.1s", StopCause.LINK_LOST, 5),
          new Expected("no reply, for a while", "no-reply@on+0.1s..1.2s", StopCause.LINK_LOST, 4),
          new Expected("late reply", "late-reply=800ms@on+0.1s..1.5s", StopCause.LINK_LOST, 4),
          new Expected(
              "reply to the previous question",
              "previous-reply@on+0.1s..1.2s",
              StopCause.LINK_LOST,
              4),
          new Expected("truncated", "truncated-reply@on+0.1s..1.2s", StopCause.LINK_LOST, 4),
          new Expected("garbage", "garbage-reply@on+0.1s..1.2s", StopCause.LINK_LOST, 4),
          new Expected("1 byte at a time", "byte-at-a-time", StopCause.PROGRAMME_FINISHED, 0),
          new Expected("echo on", "echo@on+0.1s..1.2s", StopCause.LINK_LOST, 4),
          new Expected("connection dropped", "drop-connection@on+0.1s", StopCause.LINK_LOST, 4),
          new Expected(
              "connection dropped and refused",
              "drop-connection@on+0.1s refuse-connection@on+0.09s",
              StopCause.LINK_LOST,
              5),
          new Expected("port vanishes", "pull", StopCause.LINK_LOST, 5),
          new Expected("supply ignores off", "ignores-off@on+0.1s", StopCause.CURRENT_WHILE_OFF, 5),
          new Expected(
              "supply resets itself",
              "resets-itself@on+0.1s",
              StopCause.OUTPUT_NOT_AS_COMMANDED,
              4),
          new Expected(
              "reading not a number",
              "not-a-number@on+0.1s..1.2s",
              StopCause.READING_NOT_A_NUMBER,
              4),
          new Expected(
              "reading overflows",
              "overflow-reading@on+0.1s..1.2s",
              StopCause.READING_NOT_A_NUMBER,
              4),
          new Expected(
              "error queue fills", "error-queue-fills@on+0.1s..1.2s", StopCause.SUPPLY_ERROR, 4),
          new Expected(
              "over-voltage trip", "overvoltage-trip@on+0.1s", StopCause.SUPPLY_TRIPPED, 4),
          new Expected(
              "over-current trip", "overcurrent-trip@on+0.1s", StopCause.SUPPLY_TRIPPED, 4),
          new Expected(
              "falls into CC unasked", "falls-into-cc@on+0.9s", StopCause.UNEXPECTED_REGULATION, 4),
          new Expected(
              "drops out of CC unasked",
              "dead-short",
              "leaves-cc@on+0.9s",
              Set.of(StopCause.UNEXPECTED_REGULATION),
              4),
          new Expected(
              "current runaway in the ON half",
              "runaway@on+0.9s",
              StopCause.UNEXPECTED_REGULATION,
              4),
          new Expected(
              "current while off",
              "current-while-off@on+0.1s..1.5s",
              StopCause.CURRENT_WHILE_OFF,
              4),
          new Expected(
              "voltage over set",
              "voltage-over-set=150mV@on+0.1s",
              StopCause.VOLTAGE_ABOVE_LIMIT,
              4),
          new Expected(
              "slow discharge of a big capacitor",
              "slow-discharge=0.5s",
              StopCause.PROGRAMME_FINISHED,
              0),
          new Expected(
              "reading stale", "late-reply=350ms@on+0.1s..1.5s", StopCause.READINGS_STALE, 4));

  @TestFactory
  Stream<DynamicTest> everyFaultEndsAsItMust() {
    ExecutorService pool = Executors.newFixedThreadPool(13);
    List<DynamicTest> tests = new ArrayList<>();
    for (Expected expected : ALL) {
      Optional<Path> terminal =
          expected.fault.equals("pull") ? Optional.of(folder.resolve("supply")) : Optional.empty();
      Future<Outcome> future =
          terminal.isPresent() && !hasSocat() ? null : pool.submit(() -> run(expected, terminal));
      tests.add(DynamicTest.dynamicTest(expected.name, () -> check(expected, future)));
    }
    pool.shutdown();
    return tests.stream();
  }

  /** A run that a busy machine disturbed, and not its fault, is made again. */
  private static Outcome run(Expected expected, Optional<Path> terminal) throws IOException {
    double maxAge = expected.causes.contains(StopCause.READINGS_STALE) ? 0.3 : 1;
    Outcome outcome = null;
    for (int i = 0; i < 3; i++) {
      outcome = new FaultRun(expected.scenario, expected.fault, maxAge, terminal).run();
      StopCause cause = outcome.ending().stop().cause();
      if (expected.causes.contains(cause) || !BY_A_BUSY_MACHINE.contains(cause)) {
        return outcome;
      }
    }
    return outcome;
  }

  private static void check(Expected expected, Future<Outcome> future) throws Exception {
    Assumptions.assumeTrue(future != null, "socat is not installed, so there is no terminal");
    Outcome outcome = future.get();
    StopCause cause = outcome.ending().stop().cause();
    ROWS.add(row(expected, outcome));
    assertTrue(expected.causes.contains(cause), cause + ": " + outcome.ending().stop().evidence());
    assertEquals(expected.exitCode, outcome.ending().exitCode(), outcome.ending().doubt());
    assertTrue(!outcome.ending().provenOff() || !outcome.trulyOn(), "a false proof");
  }

  private static String row(Expected expected, Outcome outcome) {
    String told = outcome.ending().stop().evidence();
    if (!outcome.ending().provenOff()) {
      told += "; output NOT proven off: " + outcome.ending().doubt();
    }
    return String.format(
        Locale.ROOT,
        "| %s | %s | %s | %s | %s | %d | %s |",
        expected.name,
        outcome.ending().stop().cause(),
        Double.isNaN(outcome.offMillis())
            ? "never arrived"
            : String.format(Locale.ROOT, "%.1f ms", outcome.offMillis()),
        outcome.ending().output(),
        outcome.trulyOn() ? "on" : "off",
        outcome.ending().exitCode(),
        told.replace("|", "/")
            .replaceAll("127\\.0\\.0\\.1:\\d+", "127.0.0.1:PORT")
            .replaceAll("/tmp/\\S+/supply", "TERMINAL"));
  }

  @AfterAll
  static void writeTable() throws IOException {
    FaultTable.write("wire", ROWS);
  }

  static boolean hasSocat() {
    return Stream.of("/usr/bin/socat", "/usr/local/bin/socat", "/bin/socat")
        .anyMatch(p -> Files.isExecutable(Path.of(p)));
  }
}
