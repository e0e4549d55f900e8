package railglow.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import railglow.config.ConfigException;
import railglow.config.LastUsedFile;

class AsLastTimeTest {
  @TempDir Path folder;
  private final Typed typed = Typed.together();
  private final Terminal terminal = typed.terminal();
  private Path bench;
  private Path board;

  @BeforeEach
  void placeFiles() throws IOException {
    bench = Files.writeString(folder.resolve("bench.yaml"), "");
    board = Files.writeString(folder.resolve("the \"board\".yaml"), "");
  }

  @Test
  void boardAndRailComeBackAndAreSaid() throws Exception {
    AsLastTime.remember(options(board, "3V3"));
    RunOptions next = options(null, null);
    AsLastTime.complete(next, terminal);
    assertEquals(board.toString(), next.board);
    assertEquals("3V3", next.rail);
    assertTrue(said().startsWith("As last time on this bench"), said());
  }

  @Test
  void anotherRailOfTheSameBoardMayBeNamed() throws Exception {
    AsLastTime.remember(options(board, "3V3"));
    RunOptions next = options(null, "1V8");
    AsLastTime.complete(next, terminal);
    assertEquals(board.toString(), next.board);
    assertEquals("1V8", next.rail);
  }

  @Test
  void aBoardThatIsGivenTakesNothingFromLastTime() throws Exception {
    AsLastTime.remember(options(board, "3V3"));
    Path other = Files.writeString(folder.resolve("other.yaml"), "");
    RunOptions next = options(other, null);
    AsLastTime.complete(next, terminal);
    assertEquals(other.toString(), next.board);
    assertNull(next.rail);
    assertTrue(said().isEmpty(), said());
  }

  @Test
  void withoutABoardNothingComesBack() throws Exception {
    AsLastTime.remember(options(board, "3V3"));
    RunOptions next = options(null, null);
    next.withoutBoard = true;
    AsLastTime.complete(next, terminal);
    assertNull(next.board);
    next.board = board.toString();
    assertThrows(UserMistake.class, () -> AsLastTime.complete(next, terminal));
  }

  @Test
  void aBoardFileThatIsGoneIsForgotten() throws Exception {
    AsLastTime.remember(options(board, "3V3"));
    Files.delete(board);
    RunOptions next = options(null, null);
    AsLastTime.complete(next, terminal);
    assertNull(next.board);
  }

  @Test
  void aDamagedMemoryIsNamedWithItsLine() throws Exception {
    Files.writeString(LastUsedFile.beside(bench), "board: x\nrial: 3V3\n");
    ConfigException e =
        assertThrows(
            ConfigException.class, () -> AsLastTime.complete(options(null, null), terminal));
    assertTrue(e.getMessage().contains("rial"), e.getMessage());
  }

  @Test
  void nothingIsRememberedOfARunWithoutABoard() throws Exception {
    AsLastTime.remember(options(null, "3V3"));
    assertFalse(Files.exists(LastUsedFile.beside(bench)));
  }

  private RunOptions options(Path boardFile, String rail) {
    RunOptions options = new RunOptions();
    options.bench = bench.toString();
    options.board = boardFile == null ? null : boardFile.toString();
    options.rail = rail;
    return options;
  }

  private String said() {
    return typed.answers();
  }
}
