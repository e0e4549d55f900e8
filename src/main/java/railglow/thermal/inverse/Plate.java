package railglow.thermal.inverse;

/**
 * A board as a plate so thin that its temperature is one number through the thickness: rho c t
 * dT/dt = k t laplace(T) - h T + power per area (Carslaw and Jaeger, Conduction of Heat in Solids,
 * 2nd ed., sections 4.1 and 10.3). Immutable.
 *
 * @param sheetConductance conductivity times thickness, W/K
 * @param areaCapacity heat capacity per area, J/(m^2 K)
 * @param lossPerArea of both faces together to the room, W/(m^2 K)
 */
public record Plate(double sheetConductance, double areaCapacity, double lossPerArea) {
  private static final double COPPER_CONDUCTIVITY = 390;
  private static final double COPPER_CAPACITY = 8930.0 * 385;
  private static final double LAMINATE_CONDUCTIVITY = 0.3;
  private static final double LAMINATE_CAPACITY = 1900.0 * 1200;

  /** Still air and radiation on both faces at a small rise; a typical value, no source. */
  public static final double USUAL_LOSS = 15;

  public Plate {
    if (!(sheetConductance > 0 && areaCapacity > 0 && lossPerArea >= 0)) {
      throw new IllegalArgumentException(
          "a plate of %s W/K, %s J/(m^2 K), %s W/(m^2 K); the first two must be above 0"
              .formatted(sheetConductance, areaCapacity, lossPerArea));
    }
  }

  /**
   * Copper layers in glass-epoxy by the rule of parallel conductors, sum(k_i t_i); copper 390 W/mK,
   * 8930 kg/m^3, 385 J/kgK, laminate 0.3 W/mK, 1900 kg/m^3, 1200 J/kgK (common handbook values).
   *
   * @param thicknessMetres of the whole board
   * @param copperMetres of all copper layers together, as far as they are filled
   */
  public static Plate board(double thicknessMetres, double copperMetres, double lossPerArea) {
    if (!(copperMetres >= 0 && copperMetres < thicknessMetres)) {
      throw new IllegalArgumentException(
          "copper of %s m in a board of %s m".formatted(copperMetres, thicknessMetres));
    }
    double laminate = thicknessMetres - copperMetres;
    return new Plate(
        copperMetres * COPPER_CONDUCTIVITY + laminate * LAMINATE_CONDUCTIVITY,
        copperMetres * COPPER_CAPACITY + laminate * LAMINATE_CAPACITY,
        lossPerArea);
  }

  /** In-plane thermal diffusivity, m^2/s. */
  public double diffusivity() {
    return sheetConductance / areaCapacity;
  }

  /** How long an even rise takes to fade, s; infinite without loss. */
  public double timeConstantSeconds() {
    return areaCapacity / lossPerArea;
  }

  /** How far a steady rise reaches, sqrt(k t / h), m; infinite without loss. */
  public double decayLengthMetres() {
    return Math.sqrt(sheetConductance / lossPerArea);
  }

  /** How far heat that changes with a frequency reaches, sqrt(D / (pi f)), m. */
  public double diffusionLengthMetres(double hertz) {
    return Math.sqrt(diffusivity() / (Math.PI * hertz));
  }

  /**
   * The plate takes a pattern of one wave number as a first-order body: this is its time constant.
   *
   * @param perMetre wave number, rad/m
   */
  public double modeTimeConstantSeconds(double perMetre) {
    return areaCapacity / (lossPerArea + sheetConductance * perMetre * perMetre);
  }

  /** The same plate with another diffusivity, its heat capacity kept. */
  public Plate withDiffusivity(double squareMetresPerSecond) {
    return new Plate(squareMetresPerSecond * areaCapacity, areaCapacity, lossPerArea);
  }
}
