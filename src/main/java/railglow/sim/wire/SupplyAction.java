package railglow.sim.wire;

import railglow.scpi.ScpiException;

/** What one command does. */
@FunctionalInterface
interface SupplyAction {
  /**
   * @return the answer; null for a command that is no question
   * @throws ScpiException for the error queue
   */
  String run(SupplyCall call) throws ScpiException;
}
