package railglow.safety;

/** Why a run's output was switched off. The first one of a run is kept for good. */
public enum StopCause {
  PROGRAMME_FINISHED(Kind.FINISHED),
  /** The run knows enough and ends early. */
  SURE_ENOUGH(Kind.FINISHED),
  OPERATOR_REQUEST(Kind.OPERATOR),
  CURRENT_ABOVE_LIMIT(Kind.LIMIT),
  VOLTAGE_ABOVE_LIMIT(Kind.LIMIT),
  POWER_ABOVE_LIMIT(Kind.LIMIT),
  ENERGY_ABOVE_LIMIT(Kind.LIMIT),
  TEMPERATURE_ABOVE_LIMIT(Kind.LIMIT),
  CURRENT_WHILE_OFF(Kind.LIMIT),
  UNEXPECTED_REGULATION(Kind.LIMIT),
  SUPPLY_TRIPPED(Kind.LIMIT),
  OUTPUT_NOT_AS_COMMANDED(Kind.LIMIT),
  READING_NOT_A_NUMBER(Kind.LIMIT),
  READINGS_STALE(Kind.LIMIT),
  FRAMES_STALE(Kind.LIMIT),
  REGISTRATION_LOST(Kind.LIMIT),
  PERMIT_LAPSED(Kind.LIMIT),
  LINK_LOST(Kind.LIMIT),
  SUPPLY_ERROR(Kind.LIMIT),
  JOURNAL_FAILED(Kind.LIMIT),
  LOOP_STALLED(Kind.LIMIT),
  COMPANION_LOST(Kind.LIMIT),
  INTERNAL_FAULT(Kind.LIMIT);

  /** What the operator must make of it. */
  public enum Kind {
    FINISHED,
    OPERATOR,
    LIMIT
  }

  private final Kind kind;

  StopCause(Kind kind) {
    this.kind = kind;
  }

  public Kind kind() {
    return kind;
  }
}
