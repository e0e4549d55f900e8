package railglow.pulse;

/** In which order ON and OFF follow one another. */
public enum PulseOrder {
  /** OFF ON ON OFF in every cycle. */
  SQUARE,
  /** Pairs of cycles of opposite sign: for benches where something keeps time with the pulses. */
  CODED
}
