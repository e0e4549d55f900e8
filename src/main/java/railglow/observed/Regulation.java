package railglow.observed;

/** What the supply says it regulates. */
public enum Regulation {
  CONSTANT_VOLTAGE,
  CONSTANT_CURRENT,
  /** The output is off, so nothing is regulated. */
  NONE,
  /** The supply itself says that it holds neither. */
  UNREGULATED,
  /** This supply can't be asked. */
  NOT_REPORTED
}
