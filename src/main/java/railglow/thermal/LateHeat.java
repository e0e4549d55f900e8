package railglow.thermal;

/**
 * How much of a source's own heat may show late. Heat that goes on through matter comes later and
 * weaker, by 1/e for every radian (Carslaw and Jaeger, Conduction of Heat in Solids, 1959, section
 * 2.6), twice that where it can't go on at the end of its way, as in the lid of a chip (section
 * 3.6). Behind a thick package it may come out so late that its surroundings seem to cool while the
 * current flows, and that what is farther away seems to follow the next pulse. Stateless.
 */
final class LateHeat {
  private static final double THROWN_BACK = 2;
  private static final double TURN = 2 * Math.PI;

  private LateHeat() {}

  /**
   * The largest share of a source's size that another place can show of its heat alone: 1 a little
   * behind the source, 0.4 % a whole period behind.
   *
   * @param source amplitude in phase and in quadrature
   * @param place likewise
   */
  static double share(double[] source, double[] place) {
    return left(turned(behind(source, place)));
  }

  /** The same of a place that seems to follow the pulse after the one that warmed the source. */
  static double shareAtNextPulse(double[] source, double[] place) {
    return left(TURN - Math.PI + turned(behind(source, place) + Math.PI));
  }

  private static double behind(double[] source, double[] place) {
    return Math.atan2(place[1], place[0]) - Math.atan2(source[1], source[0]);
  }

  /** Into 0 to a turn. */
  private static double turned(double radians) {
    return radians - TURN * Math.floor(radians / TURN);
  }

  private static double left(double radians) {
    return Math.min(1, THROWN_BACK * Math.exp(-radians));
  }
}
