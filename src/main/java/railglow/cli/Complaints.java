package railglow.cli;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.NoSuchFileException;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import railglow.config.ConfigException;

/** Turns whatever ended a command into words for the user and an exit code. */
final class Complaints {
  private static final Logger LOG = LoggerFactory.getLogger(Complaints.class);

  private Complaints() {}

  static int handle(Terminal terminal, Exception e) {
    if (e instanceof UserMistake mistake) {
      terminal.complain(mistake.getMessage());
      return mistake.exitCode();
    }
    if (e instanceof ConfigException bad) {
      bad.problems().forEach(problem -> terminal.complain(problem.toString()));
      return ExitCode.BAD_USE;
    }
    if (e instanceof NoSuchFileException missing) {
      terminal.complain("there is no file " + missing.getFile());
      return ExitCode.BAD_USE;
    }
    if (e instanceof AccessDeniedException denied) {
      terminal.complain("no permission for " + denied.getFile());
      return ExitCode.BAD_USE;
    }
    if (e instanceof IOException) {
      LOG.warn("could not be done", e);
      terminal.complain(e.getMessage() == null ? e.toString() : e.getMessage());
      return ExitCode.BAD_USE;
    }
    LOG.error("a fault of the program", e);
    terminal.complain("Railglow itself has failed: " + e);
    terminal.complain("The log has everything; please keep it. Check that the output is off.");
    return ExitCode.INTERNAL_FAULT;
  }
}
