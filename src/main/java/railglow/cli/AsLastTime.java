package railglow.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import railglow.config.ConfigException;
import railglow.config.LastUsed;
import railglow.config.LastUsedFile;

/**
 * Fills in board and rail from what was last used at the bench, and says so; remembers them. Never
 * a level, a limit or a sequence: how hard a board is pushed is said each time.
 */
final class AsLastTime {
  private static final Logger LOG = LoggerFactory.getLogger(AsLastTime.class);

  private AsLastTime() {}

  /**
   * Fills in what the options leave open: the board, and with it the rail.
   *
   * @throws ConfigException when the file that remembers can't be read
   * @throws UserMistake when the options ask for a board and for none
   */
  static void complete(RunOptions options, Terminal terminal) throws UserMistake, ConfigException {
    if (options.withoutBoard && options.board != null) {
      throw new UserMistake("--board and --without-board contradict each other: give one of them");
    }
    if (options.bench == null || options.withoutBoard || !Files.exists(Path.of(options.bench))) {
      return;
    }
    LastUsed last = LastUsedFile.readBeside(Path.of(options.bench)).orElse(null);
    if (last == null || options.board != null) {
      return;
    }
    options.board = last.board().toString();
    boolean sameRail = options.rail == null;
    if (sameRail) {
      options.rail = last.rail();
    }
    terminal.say(
        "As last time on this bench: board "
            + last.board()
            + (sameRail ? ", rail " + last.rail() : "")
            + " (else give --board and --rail, or --without-board)");
  }

  /** Remembers for the next time; a place that can't be written to is no reason to stop. */
  static void remember(RunOptions options) {
    if (options.bench == null || options.board == null || options.rail == null) {
      return;
    }
    Path bench = Path.of(options.bench);
    Path board = Path.of(options.board);
    if (!Files.exists(bench) || !Files.exists(board)) {
      return; // shipped ones have no place beside them
    }
    try {
      LastUsedFile.writeBeside(bench, new LastUsed(board, options.rail));
    } catch (IOException e) {
      LOG.info("what was used can't be remembered beside {}: {}", bench, e.toString());
    }
  }
}
