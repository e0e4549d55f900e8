package railglow.run.pulsed;

import railglow.thermal.HeatSource;
import railglow.thermal.Look;

/**
 * When a run may end because it is sure. The strongest source must be significant and well placed,
 * and must have stood at its place through the last third of the cycles: neither a chance crossing
 * of the threshold nor heat that is still spreading ends a run. Not thread-safe.
 */
final class Certainty {
  private static final double PLACED_PIXELS = 0.75;
  private static final double SAME_PLACE_PIXELS = 1;
  private static final double PERSISTENCE = 1.5;
  private int sinceCycles;
  private double column;
  private double row;

  boolean isReached(Look look) {
    if (look.sources().isEmpty()) {
      sinceCycles = 0;
      return false;
    }
    HeatSource first = look.sources().get(0);
    boolean moved = Math.hypot(first.column() - column, first.row() - row) > SAME_PLACE_PIXELS;
    if (sinceCycles == 0 || moved) {
      sinceCycles = look.cycles();
      column = first.column();
      row = first.row();
    }
    double worst = Math.max(first.columnVariance(), first.rowVariance());
    boolean placed = worst <= PLACED_PIXELS * PLACED_PIXELS;
    return placed && look.cycles() >= PERSISTENCE * sinceCycles;
  }
}
