package railglow.sim.heat;

/** How a surface loses heat to the room, both faces of the plate together. */
@FunctionalInterface
public interface SurfaceLoss {
  /** Stefan-Boltzmann constant, exact SI value, W/(m^2 K^4). */
  double STEFAN_BOLTZMANN = 5.670374419e-8;

  /**
   * @param riseKelvin of the surface above the room
   * @return W/(m^2 K), never negative
   */
  double coefficient(double riseKelvin);

  /** The same at every rise: makes the heat equation linear, for checks against closed forms. */
  static SurfaceLoss constant(double coefficient) {
    return rise -> coefficient;
  }

  /**
   * Free air over a level plate: laminar natural convection from the upper face 1.32 (dT/L)^(1/4)
   * and from the lower face 0.59 (dT/L)^(1/4), with radiation from both faces to a room at the same
   * temperature as the air (textbook correlations for air at room pressure; Cengel, Heat Transfer,
   * chapter on cooling of electronic equipment).
   *
   * @param lengthMetres characteristic length of the board
   * @param emissivity of the faces
   * @param roomKelvin absolute temperature of the room
   */
  static SurfaceLoss levelPlateInAir(double lengthMetres, double emissivity, double roomKelvin) {
    return rise -> {
      double hot = roomKelvin + rise;
      double radiation =
          2
              * emissivity
              * STEFAN_BOLTZMANN
              * (hot * hot + roomKelvin * roomKelvin)
              * (hot + roomKelvin);
      double convection = (1.32 + 0.59) * Math.pow(Math.abs(rise) / lengthMetres, 0.25);
      return radiation + convection;
    };
  }
}
