package railglow.observed;

/** A protection of the supply itself that has acted. */
public enum Trip {
  OVERVOLTAGE,
  OVERCURRENT,
  OVERPOWER,
  OVERTEMPERATURE
}
