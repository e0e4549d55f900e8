package railglow.cli;

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
    LOG.error("a fault of the program", e);
    terminal.complain("Railglow itself has failed: " + e);
    terminal.complain("The log has everything; please keep it. Check that the output is off.");
    return ExitCode.INTERNAL_FAULT;
  }
}
