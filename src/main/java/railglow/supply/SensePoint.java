package railglow.supply;

/** Where a supply regulates and measures its voltage. */
public enum SensePoint {
  /** As its wires and its front panel have it: nothing is said to it. */
  AS_WIRED,
  /** At its own terminals: leads and contact are part of what it measures. */
  TERMINALS,
  /** At the board, through sense wires (4-wire). */
  BOARD
}
