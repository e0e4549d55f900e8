package railglow.cli;

/** What the process says when it ends; the same for every command. */
public final class ExitCode {
  /** Done. */
  public static final int DONE = 0;

  /** {@code replay --verify}: the findings differ from the recorded ones. */
  public static final int DIFFERENT = 1;

  /** Bad use or a bad file; nothing was switched. */
  public static final int BAD_USE = 2;

  /** Refused by the envelope; nothing was opened. */
  public static final int REFUSED = 3;

  /** Stopped by a limit, output proven off. */
  public static final int STOPPED_BY_LIMIT = 4;

  /** Stopped and the output is NOT proven off. */
  public static final int NOT_PROVEN_OFF = 5;

  /** A fault of ours; the log file has everything. */
  public static final int INTERNAL_FAULT = 70;

  /** Stopped by the operator, output proven off. */
  public static final int STOPPED_BY_OPERATOR = 130;

  private ExitCode() {}
}
