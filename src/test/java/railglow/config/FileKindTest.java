package railglow.config;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** A file given where one of another kind is wanted. */
class FileKindTest {
  private static final Map<FileKind, String> TEXTS =
      Map.of(
          FileKind.BENCH, shipped("instruments/bench-simulated.yaml"),
          FileKind.CAMERA, shipped("instruments/camera-simulated.yaml"),
          FileKind.SUPPLY, shipped("instruments/supply-simulated.yaml"),
          FileKind.SEQUENCE, shipped("sequences/low-ohm-hunt.yaml"),
          FileKind.BOARD, shipped("docs/examples/hx12/board.yaml"),
          FileKind.MEASURED, "# Measured.\ncamera: \"simulated camera\"\nnoise:\n  frames: 3\n",
          FileKind.LAST_USED, "# Last used.\nboard: board.yaml\nrail: 3V3\n");

  @TempDir Path folder;

  /** Reads a file as what is asked for somewhere. */
  private interface Reader {
    Object read(Path file) throws ConfigException;
  }

  private static final Map<FileKind, Reader> READERS =
      Map.of(
          FileKind.BENCH, BenchFile::read,
          FileKind.CAMERA, CameraDescriptorFile::read,
          FileKind.SUPPLY, SupplyDescriptorFile::read,
          FileKind.SEQUENCE, SequenceFile::read,
          FileKind.BOARD, BoardFile::read,
          FileKind.MEASURED, MeasuredCameraFile::read,
          FileKind.LAST_USED, FileKindTest::lastUsed);

  private static Object lastUsed(Path file) throws ConfigException {
    return LastUsedFile.readBeside(
        file.resolveSibling(file.getFileName().toString().replace("-last-used", "")));
  }

  private static String shipped(String file) {
    try {
      return Files.readString(Path.of(file));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  static Stream<Arguments> pairs() {
    List<Arguments> pairs = new ArrayList<>();
    for (FileKind wanted : FileKind.values()) {
      for (FileKind given : FileKind.values()) {
        if (given != wanted) {
          pairs.add(Arguments.of(given, wanted));
        }
      }
    }
    return pairs.stream();
  }

  private ConfigProblem onlyProblem(String text, FileKind wanted) throws Exception {
    Path file = Files.writeString(folder.resolve("given-last-used.yaml"), text);
    List<ConfigProblem> problems =
        assertThrows(ConfigException.class, () -> READERS.get(wanted).read(file)).problems();
    assertEquals(1, problems.size(), problems.toString());
    return problems.get(0);
  }

  @ParameterizedTest
  @MethodSource("pairs")
  void aFileOfAnotherKindIsNamedInOneProblemAtALineThatTells(FileKind given, FileKind wanted)
      throws Exception {
    ConfigProblem problem = onlyProblem(TEXTS.get(given), wanted);
    assertEquals(given.insteadOf(wanted), problem.message());
    String line = TEXTS.get(given).lines().toList().get(problem.line() - 1);
    assertTrue(given.owns(line.replaceFirst(":.*", "")), line);
    if (problem.message().contains("for example")) {
      Path example = Path.of(problem.message().replaceFirst(".* ", ""));
      assertTrue(Files.exists(example), problem.message());
    }
  }

  @Test
  void theMessageSaysWhatTheFileIsAndWhatIsWantedInItsPlace() throws Exception {
    assertEquals(
        folder.resolve("given-last-used.yaml")
            + ":3: this is a camera's file; --bench asks for a bench's: for example"
            + " instruments/bench-simulated.yaml",
        onlyProblem(TEXTS.get(FileKind.CAMERA), FileKind.BENCH).toString());
  }

  @Test
  void aFileThatMightStillBeTheOneWantedIsReadForItsKeys() throws Exception {
    Path file = Files.writeString(folder.resolve("half.yaml"), "name: half\nframe: 3\nleads: 2\n");
    String said = assertThrows(ConfigException.class, () -> BenchFile.read(file)).getMessage();
    assertTrue(said.contains("'frame' is not a key known here"), said);
    assertTrue(said.contains("'supply' is missing"), said);
  }
}
