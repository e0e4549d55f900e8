package railglow.run;

import railglow.observed.OutputState;
import railglow.safety.Stop;

/**
 * How a run ended.
 *
 * @param stop the first cause
 * @param output what is known of the output at the end
 * @param doubt why the output is not proven off; empty when it is
 */
public record RunEnding(Stop stop, OutputState output, String doubt) {
  private static final int LIMIT_EXIT = 4;
  private static final int NOT_PROVEN_EXIT = 5;
  private static final int OPERATOR_EXIT = 130;

  public boolean provenOff() {
    return output == OutputState.PROVEN_OFF;
  }

  /** The process's exit code for such an ending. */
  public int exitCode() {
    if (!provenOff()) {
      return NOT_PROVEN_EXIT;
    }
    return switch (stop.cause().kind()) {
      case FINISHED -> 0;
      case OPERATOR -> OPERATOR_EXIT;
      case LIMIT -> LIMIT_EXIT;
    };
  }
}
