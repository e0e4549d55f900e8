package railglow.board;

import railglow.thermal.inverse.Plate;

/**
 * What the board is made of, as far as it spreads heat.
 *
 * @param thicknessMillimetres of the whole board
 * @param copperMillimetres of all copper layers together, as far as they are filled
 * @param stated whether the board file says so
 */
public record BoardPlate(double thicknessMillimetres, double copperMillimetres, boolean stated) {
  /** Four layers of 35 um on the usual 1.6 mm; common practice, no source. */
  public static final BoardPlate USUAL = new BoardPlate(1.6, 0.14, false);

  public Plate plate() {
    return Plate.board(thicknessMillimetres * 1e-3, copperMillimetres * 1e-3, Plate.USUAL_LOSS);
  }
}
