package railglow.run.logging;

import railglow.observed.OutputState;
import railglow.run.RunEnding;
import railglow.safety.Stop;

/**
 * How a log ended.
 *
 * @param output of the supply this program drove; null when it drove none
 * @param doubt why that output is not proven off; empty when it is, or none was driven
 */
public record LogEnding(Stop stop, OutputState output, String doubt) {
  private static final int LIMIT_EXIT = 4;
  private static final int OPERATOR_EXIT = 130;

  /** Whether an output of ours may still be on. */
  public boolean outputInDoubt() {
    return output != null && output != OutputState.PROVEN_OFF;
  }

  /** The process's exit code; one about the output only where the output is ours. */
  public int exitCode() {
    if (output != null) {
      return new RunEnding(stop, output, doubt).exitCode();
    }
    return switch (stop.cause().kind()) {
      case FINISHED -> 0;
      case OPERATOR -> OPERATOR_EXIT;
      case LIMIT -> LIMIT_EXIT;
    };
  }
}
