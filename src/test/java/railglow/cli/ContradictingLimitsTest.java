package railglow.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Every pair of limits that can contradict each other: refused before anything is opened. */
class ContradictingLimitsTest {
  private static final String SUPPLY = "supply-simulated.yaml";
  private static final String CAMERA = "camera-simulated.yaml";
  private static final String BENCH = "bench-simulated.yaml";
  private static final String BOARD = "board.yaml";
  private static final String SEQUENCE = "gentle.yaml";
  @TempDir Path folder;
  private final Typed typed = Typed.apart();

  /** One change of one file. */
  record Change(String file, String from, String to) {}

  private static Arguments pair(String name, List<Change> changes, int code, String... both) {
    return Arguments.of(name, changes, code, List.of(both));
  }

  static Stream<Arguments> pairs() {
    int bad = ExitCode.BAD_USE;
    return Stream.of(
        pair(
            "reading-age of the bench and reading-interval of the supply",
            List.of(
                new Change(BENCH, "reading-age: 500 ms", "reading-age: 100 ms"),
                new Change(SUPPLY, "reading-interval: 50 ms", "reading-interval: 200 ms")),
            bad,
            "a reading may be at most 100 ms (bench file, simulated bench)",
            "one comes every 200 ms (supply simulated supply)"),
        pair(
            "frame-age of the bench and rate of the camera",
            List.of(
                new Change(BENCH, "frame-age: 2 s", "frame-age: 100 ms"),
                new Change(CAMERA, "rate: 25 Hz", "rate: 9 Hz")),
            bad,
            "a camera frame may be at most 100 ms old (bench file, simulated bench)",
            "one comes every 111.1 ms (camera simulated camera)"),
        pair(
            "the supply's watchdog and its reading-interval",
            List.of(new Change(SUPPLY, "longest: 3600 s", "longest: 90 ms")),
            bad,
            "the supply's own watchdog waits at most 90 ms",
            "a reading comes only every 50 ms (supply simulated supply)"),
        pair(
            "voltage of the bench and lowest voltage of the supply",
            List.of(
                new Change(BENCH, "voltage: 12 V", "voltage: 50 mV"),
                new Change(SUPPLY, "lowest: 0 V, highest: 30 V", "lowest: 100 mV, highest: 30 V")),
            bad,
            "the voltage may be at most 50 mV (bench file, simulated bench)",
            "can't be set below 100 mV (supply simulated supply)"),
        pair(
            "current of the bench and lowest current of the supply",
            List.of(
                new Change(BENCH, "current: 3 A", "current: 5 mA"),
                new Change(SUPPLY, "lowest: 1 mA, highest: 5 A", "lowest: 10 mA, highest: 5 A")),
            bad,
            "the current may be at most 5 mA (bench file, simulated bench)",
            "can't be set below 10 mA (supply simulated supply)"),
        pair(
            "rating of the leads and lowest current of the supply",
            List.of(
                new Change(BENCH, "rating: 6 A", "rating: 10 mA"),
                new Change(SUPPLY, "lowest: 1 mA, highest: 5 A", "lowest: 20 mA, highest: 5 A")),
            bad,
            "the current may be at most 10 mA (the leads' rating, bench simulated bench)",
            "can't be set below 20 mA (supply simulated supply)"),
        pair(
            "what a rail allows and its nominal voltage",
            List.of(new Change(BOARD, "highest-injection: 2.6 V", "highest-injection: 3.3 V")),
            bad,
            "highest-injection' is 3.3 V, not below 'nominal' 3.3 V"),
        pair(
            "the supply's pause and its time for a reply",
            List.of(
                new Change(SUPPLY, "reply-within: 500 ms", "reply-within: 20 ms\n  pause: 1 s")),
            bad,
            "pause' is 1.0 s, not below 'reply-within' 0.02 s"),
        pair(
            "lowest and highest of one range",
            List.of(new Change(SUPPLY, "lowest: 0 V, highest: 30 V", "lowest: 30 V, highest: 3 V")),
            bad,
            "lowest' is 30 V, above 'highest' 3 V"),
        pair(
            "least and most cycles of a sequence",
            List.of(new Change(SEQUENCE, "cycles-at-most: ", "cycles-at-most: 1 # ")),
            bad,
            "'cycles-at-most' is 1, below 'cycles-at-least'"),
        pair(
            "the level and the range of the over-voltage protection",
            List.of(new Change(SUPPLY, "highest: 33 V", "highest: 500 mV")),
            ExitCode.REFUSED,
            "over-voltage protection just outside the plan",
            "supply simulated supply allows at most 500 mV"));
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("pairs")
  void isRefusedWithBothSidesNamed(String name, List<Change> changes, int code, List<String> both)
      throws IOException {
    copy(Path.of("instruments"), folder);
    copy(Path.of("docs/examples/hx12"), folder);
    Files.copy(Path.of("sequences", SEQUENCE), folder.resolve(SEQUENCE));
    for (Change change : changes) {
      Path file = folder.resolve(change.file());
      String text = Files.readString(file);
      assertTrue(text.contains(change.from()), change.toString());
      Files.writeString(file, text.replace(change.from(), change.to()));
    }
    Path runs = folder.resolve("runs");
    assertEquals(code, hunt(runs), this::said);
    for (String side : both) {
      assertTrue(said().contains(side), side + " in: " + said());
    }
    assertFalse(Files.exists(runs), "nothing was made");
  }

  @Test
  void unchangedTheSameFilesContradictThemselvesNowhere() throws IOException {
    copy(Path.of("instruments"), folder);
    copy(Path.of("docs/examples/hx12"), folder);
    Files.copy(Path.of("sequences", SEQUENCE), folder.resolve(SEQUENCE));
    assertEquals(0, run("plan", folder.resolve("runs")), this::said);
  }

  private int hunt(Path runs) {
    return run("hunt", runs);
  }

  private int run(String command, Path runs) {
    List<String> words =
        new java.util.ArrayList<>(
            List.of(
                command,
                "--bench",
                folder.resolve(BENCH).toString(),
                "--board",
                folder.resolve(BOARD).toString(),
                "--rail",
                "3V3",
                "--sequence",
                folder.resolve(SEQUENCE).toString()));
    if (command.equals("hunt")) {
      words.addAll(List.of("--runs", runs.toString()));
    }
    return typed.run(words.toArray(String[]::new));
  }

  private String said() {
    return typed.onOneLine();
  }

  private static void copy(Path from, Path to) throws IOException {
    try (Stream<Path> files = Files.list(from)) {
      for (Path file : (Iterable<Path>) files.filter(Files::isRegularFile)::iterator) {
        Files.copy(file, to.resolve(file.getFileName().toString()));
      }
    }
  }
}
