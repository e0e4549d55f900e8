package railglow.sim.heat;

import java.util.ArrayList;
import java.util.List;

/**
 * A board with parts: takes the heat of each part over a time and gives temperatures. Every part
 * exchanges heat with the cells under it; what leaves the part enters the board, exactly.
 *
 * <p>Deterministic. Not thread-safe.
 */
public final class BoardHeat {
  private final ThinPlate plate;
  private final List<PlacedPart> parts;
  private final int[][] cellsUnder;
  private final double[] partRise;
  private final double partLossPerKelvin;

  /**
   * @param partLossPerSquareMetreKelvin of the upper faces of the parts to the room
   */
  public BoardHeat(ThinPlate plate, List<PlacedPart> parts, double partLossPerSquareMetreKelvin) {
    this.plate = plate;
    this.parts = List.copyOf(parts);
    this.partLossPerKelvin = partLossPerSquareMetreKelvin;
    partRise = new double[parts.size()];
    cellsUnder = new int[parts.size()][];
    for (int i = 0; i < parts.size(); i++) {
      cellsUnder[i] = cellsUnder(parts.get(i));
    }
  }

  public ThinPlate plate() {
    return plate;
  }

  public List<PlacedPart> parts() {
    return parts;
  }

  /** Rise of a part's body above the room, kelvin. */
  public double partRise(int part) {
    return partRise[part];
  }

  /**
   * Lets time pass.
   *
   * @param joules what each part received in this time, one number per part
   * @param evenJoules what arose all over the board
   */
  public void advance(double seconds, double[] joules, double evenJoules) {
    if (!(seconds > 0)) {
      return;
    }
    plate.addEvenly(evenJoules);
    plate.refreshLosses();
    int divisions = plate.divisions(seconds);
    double dt = seconds / divisions;
    for (int k = 0; k < divisions; k++) {
      for (int i = 0; i < partRise.length; i++) {
        exchange(i, joules[i] / seconds, dt);
      }
      plate.conduct(dt);
    }
  }

  /** One part relaxes exactly towards its equilibrium with the mean of the cells under it. */
  private void exchange(int i, double watts, double dt) {
    PlacedPart part = parts.get(i);
    int[] cells = cellsUnder[i];
    float[] rise = plate.rise();
    double under = 0;
    for (int cell : cells) {
      under += rise[cell];
    }
    under /= cells.length;
    double loss = partLossPerKelvin * part.widthMetres() * part.heightMetres();
    double conductance = part.contactConductance() + loss;
    double bodyWatts = part.bodyShare() * watts;
    double settled = (bodyWatts + part.contactConductance() * under) / conductance;
    double decay = Math.exp(-conductance * dt / part.heatCapacity());
    double before = partRise[i];
    double after = settled + (before - settled) * decay;
    partRise[i] = after;
    double stored = part.heatCapacity() * (after - before);
    double meanRise =
        settled + (before - settled) * (1 - decay) / (conductance * dt / part.heatCapacity());
    double lost = loss * meanRise * dt;
    double intoBoard = (watts * dt - stored - lost) / cells.length;
    for (int cell : cells) {
      plate.addJoules(cell, intoBoard);
    }
  }

  private int[] cellsUnder(PlacedPart part) {
    double cell = plate.cellMetres();
    List<Integer> found = new ArrayList<>();
    for (int row = 0; row < plate.rows(); row++) {
      for (int column = 0; column < plate.columns(); column++) {
        double dx = Math.abs((column + 0.5) * cell - part.xMetres());
        double dy = Math.abs((row + 0.5) * cell - part.yMetres());
        if (dx <= part.widthMetres() / 2 && dy <= part.heightMetres() / 2) {
          found.add(row * plate.columns() + column);
        }
      }
    }
    if (found.isEmpty()) {
      int column = clamp(part.xMetres() / cell, plate.columns());
      int row = clamp(part.yMetres() / cell, plate.rows());
      found.add(row * plate.columns() + column);
    }
    return found.stream().mapToInt(Integer::intValue).toArray();
  }

  private static int clamp(double cells, int count) {
    return Math.max(0, Math.min(count - 1, (int) cells));
  }
}
