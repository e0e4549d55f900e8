package railglow.supply;

/** What the supply says of its output switch. */
public enum SwitchState {
  ON,
  OFF,
  /** Not asked in this exchange, or this supply can't be asked. */
  NOT_TOLD
}
