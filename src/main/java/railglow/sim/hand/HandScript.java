package railglow.sim.hand;

import java.util.List;
import java.util.Optional;

/**
 * What the hand does and when.
 *
 * @param moves empty when the leads are clipped on for good
 */
public record HandScript(List<HandMove> moves) {
  public static final HandScript CLIPPED = new HandScript(List.of());
  private static final double OPEN_OHMS = 1e9;

  public HandScript {
    moves = List.copyOf(moves);
  }

  /** The move at a time; empty while the probe is in the air. */
  public Optional<HandMove> at(double seconds) {
    for (HandMove move : moves) {
      if (move.holds(seconds)) {
        return Optional.of(move);
      }
    }
    return Optional.empty();
  }

  /** When the last move ends; 0 without one. */
  public double endSeconds() {
    return moves.stream().mapToDouble(HandMove::endSeconds).max().orElse(0);
  }

  /** Contact resistance at a time. */
  public double ohmsAt(double seconds) {
    return at(seconds).map(move -> move.ohmsAt(seconds)).orElse(OPEN_OHMS);
  }
}
