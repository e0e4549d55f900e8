package railglow.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Makes the terminal hand over each key at once instead of whole lines, as long as this is open.
 * Signals such as Ctrl-C stay what they are. A terminal whose program was killed without a chance
 * to do anything is put right by a small process that waits for just that. Where there is no
 * terminal, or no stty, nothing is changed.
 */
final class RawKeys implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(RawKeys.class);
  private static final long PATIENCE_SECONDS = 3;

  /** Waits until the program is gone, whichever way, and sets the terminal as it was. */
  private static final String RESTORE_WHEN_GONE =
      "trap '' INT TERM HUP QUIT TTOU; read -r never; stty \"$1\" </dev/tty";

  private final String saved;
  private final Thread restoring;
  private Process waiting;

  private RawKeys(String saved) {
    this.saved = saved;
    this.restoring = new Thread(this::restore, "restore-terminal");
  }

  static RawKeys open() {
    String saved = System.console() == null ? "" : stty("-g");
    RawKeys keys = new RawKeys(saved);
    if (keys.isRaw()) {
      Runtime.getRuntime().addShutdownHook(keys.restoring);
      keys.restoreWhenGone();
      stty("-icanon", "-echo", "min", "1", "time", "0");
    }
    return keys;
  }

  /** Whether each key is handed over at once. */
  boolean isRaw() {
    return !saved.isEmpty();
  }

  private void restore() {
    stty(saved);
    if (waiting != null) {
      waiting.destroyForcibly();
    }
  }

  private void restoreWhenGone() {
    try {
      waiting =
          new ProcessBuilder("sh", "-c", RESTORE_WHEN_GONE, "sh", saved)
              .redirectOutput(ProcessBuilder.Redirect.DISCARD)
              .redirectError(ProcessBuilder.Redirect.DISCARD)
              .start();
    } catch (IOException e) {
      LOG.info("nobody puts the terminal right should the program be killed: {}", e.toString());
    }
  }

  /** Its answer; empty when it failed. */
  private static String stty(String... words) {
    List<String> command = new ArrayList<>(List.of("stty"));
    command.addAll(List.of(words));
    try {
      Process process =
          new ProcessBuilder(command)
              .redirectInput(ProcessBuilder.Redirect.INHERIT)
              .redirectErrorStream(true)
              .start();
      String said =
          new String(process.getInputStream().readAllBytes(), StandardCharsets.US_ASCII).strip();
      boolean ended = process.waitFor(PATIENCE_SECONDS, TimeUnit.SECONDS);
      return ended && process.exitValue() == 0 ? said : "";
    } catch (IOException e) {
      LOG.info("keys need Enter here: {}", e.toString());
      return "";
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return "";
    }
  }

  @Override
  public void close() {
    if (isRaw()) {
      restore();
      try {
        Runtime.getRuntime().removeShutdownHook(restoring);
      } catch (IllegalStateException e) {
        LOG.debug("the process is ending already", e);
      }
    }
  }
}
