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
  /** A small part and what is under it settle within five of these. */
  private static final double MOST_SECONDS = 0.004;

  private final ThinPlate plate;
  private final List<PlacedPart> parts;
  private final int[][] cellsUnder;
  private final double[] partRise;
  private final double partLossPerKelvin;
  private final PairInContact[] pairs;

  /**
   * @param partLossPerSquareMetreKelvin of the upper faces of the parts to the room
   */
  public BoardHeat(ThinPlate plate, List<PlacedPart> parts, double partLossPerSquareMetreKelvin) {
    this.plate = plate;
    this.parts = List.copyOf(parts);
    this.partLossPerKelvin = partLossPerSquareMetreKelvin;
    partRise = new double[parts.size()];
    pairs = new PairInContact[parts.size()];
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
    int divisions = Math.max(plate.divisions(seconds), (int) Math.ceil(seconds / MOST_SECONDS));
    double dt = seconds / divisions;
    for (int i = 0; i < pairs.length; i++) {
      if (pairs[i] == null || pairs[i].seconds() != dt / 2) {
        pairs[i] = pair(i, dt / 2);
      }
    }
    for (int k = 0; k < divisions; k++) {
      exchange(joules, seconds);
      plate.conduct(dt);
      exchange(joules, seconds);
    }
  }

  /** Half before and half after conduction: the error of taking turns is of second order. */
  private void exchange(double[] joules, double seconds) {
    for (int i = 0; i < pairs.length; i++) {
      exchange(i, joules[i] / seconds);
    }
  }

  private void exchange(int i, double watts) {
    PairInContact pair = pairs[i];
    int[] cells = cellsUnder[i];
    float[] rise = plate.rise();
    double under = 0;
    for (int cell : cells) {
      under += rise[cell];
    }
    under /= cells.length;
    double bodyWatts = parts.get(i).bodyShare() * watts;
    double body = pair.body(partRise[i], under, bodyWatts, watts - bodyWatts);
    double warmer = pair.board(partRise[i], under, bodyWatts, watts - bodyWatts) - under;
    partRise[i] = body;
    for (int cell : cells) {
      plate.addJoules(cell, warmer * plate.cellCapacity());
    }
  }

  private PairInContact pair(int i, double seconds) {
    PlacedPart part = parts.get(i);
    return new PairInContact(
        part.heatCapacity(),
        cellsUnder[i].length * plate.cellCapacity(),
        part.contactConductance(),
        partLossPerKelvin * part.widthMetres() * part.heightMetres(),
        seconds);
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
