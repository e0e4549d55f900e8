package railglow.cli;

/** Something the user can mend: its message is shown as it is, without a stack trace. */
final class UserMistake extends Exception {
  private final int exitCode;

  UserMistake(String message) {
    this(ExitCode.BAD_USE, message);
  }

  UserMistake(int exitCode, String message) {
    super(message);
    this.exitCode = exitCode;
  }

  int exitCode() {
    return exitCode;
  }
}
