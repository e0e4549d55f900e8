package railglow.sim.heat;

/**
 * A part on the board as a lump of heat.
 *
 * @param name its reference, for example C37
 * @param xMetres centre, x right, origin at the board's lower left corner
 * @param yMetres centre, y up
 * @param widthMetres of the body along x as it lies on the board
 * @param heightMetres of the body along y
 * @param heatCapacity of the body, J/K
 * @param contactConductance to the board under it, W/K
 * @param bodyShare of its heat that arises in the body; the rest enters the board at its pads at
 *     once, as that of a capacitor that is cracked at its end cap does
 * @param emissivity of its upper face, 0 to 1
 * @param onTop whether it sits on the face the camera sees
 */
public record PlacedPart(
    String name,
    double xMetres,
    double yMetres,
    double widthMetres,
    double heightMetres,
    double heatCapacity,
    double contactConductance,
    double bodyShare,
    double emissivity,
    boolean onTop) {
  /** Volumetric heat capacity of ceramic and mould compound, J/(m^3 K); a typical value. */
  private static final double BODY_CAPACITY = 2.2e6;

  /**
   * A part of ordinary build: capacity from its volume, contact from its area.
   *
   * @param bodyMetres its height above the board
   * @param contactPerArea W/(m^2 K) between body and board
   */
  public static PlacedPart of(
      String name,
      double xMetres,
      double yMetres,
      double widthMetres,
      double heightMetres,
      double bodyMetres,
      double contactPerArea,
      double emissivity) {
    double area = widthMetres * heightMetres;
    return new PlacedPart(
        name,
        xMetres,
        yMetres,
        widthMetres,
        heightMetres,
        BODY_CAPACITY * area * bodyMetres,
        contactPerArea * area,
        1,
        emissivity,
        true);
  }

  public PlacedPart onBottom() {
    return new PlacedPart(
        name,
        xMetres,
        yMetres,
        widthMetres,
        heightMetres,
        heatCapacity,
        contactConductance,
        bodyShare,
        emissivity,
        false);
  }

  public PlacedPart withBodyShare(double share) {
    return new PlacedPart(
        name,
        xMetres,
        yMetres,
        widthMetres,
        heightMetres,
        heatCapacity,
        contactConductance,
        share,
        emissivity,
        onTop);
  }
}
