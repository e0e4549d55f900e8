package railglow.sim.heat;

/**
 * A plate so thin that its temperature is one number through the thickness.
 *
 * @param thicknessMetres of the whole stack
 * @param conductivity in-plane, W/(m K)
 * @param heatCapacity per volume, J/(m^3 K)
 */
public record PlateMaterial(double thicknessMetres, double conductivity, double heatCapacity) {
  private static final double COPPER_CONDUCTIVITY = 390;
  private static final double COPPER_CAPACITY = 8930.0 * 385;
  private static final double LAMINATE_CONDUCTIVITY = 0.3;
  private static final double LAMINATE_CAPACITY = 1900.0 * 1200;

  /**
   * Copper layers in a glass-epoxy board by the rule of parallel conductors, sum(k_i t_i) / t; the
   * material values are common handbook ones (copper 390 W/mK, laminate 0.3 W/mK).
   *
   * @param thicknessMetres of the board
   * @param copperMetres thickness of all copper layers together, as far as they are filled
   */
  public static PlateMaterial board(double thicknessMetres, double copperMetres) {
    double copper = copperMetres / thicknessMetres;
    return new PlateMaterial(
        thicknessMetres,
        copper * COPPER_CONDUCTIVITY + (1 - copper) * LAMINATE_CONDUCTIVITY,
        copper * COPPER_CAPACITY + (1 - copper) * LAMINATE_CAPACITY);
  }

  /** In-plane thermal diffusivity, m^2/s. */
  public double diffusivity() {
    return conductivity / heatCapacity;
  }
}
