package railglow.run.pulsed;

import railglow.thermal.HeatSource;
import railglow.thermal.Look;

/**
 * When a run may end because it is sure. The strongest source must be significant and well placed;
 * and either beyond all doubt, or have stood at its place through the last third of the cycles, so
 * that a chance crossing of the threshold ends nothing. Not thread-safe.
 */
final class Certainty {
  private static final double PLACED_PIXELS = 0.75;
  private static final double SAME_PLACE_PIXELS = 3;
  private static final double BEYOND_DOUBT = 0.02;
  private static final double PERSISTENCE = 1.5;
  private final double familyWiseError;
  private int sinceCycles;
  private double column;
  private double row;

  /**
   * @param familyWiseError of the run
   */
  Certainty(double familyWiseError) {
    this.familyWiseError = familyWiseError;
  }

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
    boolean beyondDoubt = first.familyWiseP() <= BEYOND_DOUBT * familyWiseError;
    return placed && (beyondDoubt || look.cycles() >= PERSISTENCE * sinceCycles);
  }
}
