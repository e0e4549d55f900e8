package railglow.board.imports;

/** The units an IPC-D-356A netlist can be in. */
enum NetlistUnits {
  /** 0.0001 inch and degrees. */
  TENTH_MIL_DEGREE(0.00254, false),
  /** 0.001 mm and degrees. */
  MICROMETRE_DEGREE(0.001, false),
  /** 0.0001 inch and thousandths of a radian. */
  TENTH_MIL_RADIAN(0.00254, true);

  private final double millimetres;
  private final boolean radians;

  NetlistUnits(double millimetres, boolean radians) {
    this.millimetres = millimetres;
    this.radians = radians;
  }

  double millimetres(int count) {
    return count * millimetres;
  }

  double degrees(int count) {
    return radians ? Math.toDegrees(count / 1000.0) : count;
  }
}
