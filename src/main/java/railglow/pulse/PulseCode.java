package railglow.pulse;

/**
 * The coded order of pulses: OFF ON ON OFF, then ON OFF OFF ON twice, then OFF ON ON OFF, and so on
 * (sixteen quarters of the sequence of Thue and Morse, which is one of the functions of Walsh).
 * Within a pair of cycles cancels what repeats with the period, and a straight drift; over two
 * pairs what repeats with every other period. A warm body sees the same history, or its opposite,
 * in every pair, so slow bodies lose nothing. No ON time is longer than the square's half period,
 * and each cycle is ON for half of it. Pure.
 */
final class PulseCode {
  private PulseCode() {}

  /** Whether a cycle is ON OFF OFF ON instead of OFF ON ON OFF. */
  static boolean inverted(int cycle) {
    return ((cycle ^ cycle >> 1) & 1) == 1;
  }
}
