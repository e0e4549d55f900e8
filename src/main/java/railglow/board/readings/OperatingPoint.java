package railglow.board.readings;

/**
 * Where a supply settles on a resistive load: it holds its voltage until the current limit is
 * reached, then it holds the current (the crossover at Vset/Iset). Pure.
 *
 * @param volts at the load, leads included
 * @param amperes through it
 * @param constantCurrent whether the current limit holds
 */
public record OperatingPoint(double volts, double amperes, boolean constantCurrent) {
  /**
   * @param setVolts above 0
   * @param limitAmperes above 0
   * @param loadOhms 0 or more
   */
  public static OperatingPoint of(double setVolts, double limitAmperes, double loadOhms) {
    if (!(setVolts > 0) || !(limitAmperes > 0) || !(loadOhms >= 0)) {
      throw new IllegalArgumentException(
          "no operating point for "
              + setVolts
              + " V, "
              + limitAmperes
              + " A, "
              + loadOhms
              + " ohm");
    }
    return loadOhms * limitAmperes < setVolts
        ? new OperatingPoint(limitAmperes * loadOhms, limitAmperes, true)
        : new OperatingPoint(setVolts, setVolts / loadOhms, false);
  }

  public double watts() {
    return volts * amperes;
  }
}
