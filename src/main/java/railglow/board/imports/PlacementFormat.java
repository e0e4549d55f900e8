package railglow.board.imports;

import java.util.Optional;

/**
 * How to read a placement file.
 *
 * @param columns header names; those left empty are recognised by their usual names
 * @param unit of the coordinates; empty when the file says it
 * @param rotation the sense in which angles grow, seen from the top
 * @param bottomX whether X of bottom parts is written negated
 * @param originXMillimetres where the board's lower left corner is in the file's coordinates
 * @param originYMillimetres likewise
 */
public record PlacementFormat(
    PlacementColumns columns,
    Optional<LengthUnit> unit,
    RotationSense rotation,
    BottomX bottomX,
    double originXMillimetres,
    double originYMillimetres) {
  /** Everything recognised from the file itself. */
  public static final PlacementFormat RECOGNISED =
      new PlacementFormat(
          PlacementColumns.RECOGNISED,
          Optional.empty(),
          RotationSense.COUNTER_CLOCKWISE,
          BottomX.DETECT,
          0,
          0);

  /** The sense of a growing angle, seen from the top. */
  public enum RotationSense {
    COUNTER_CLOCKWISE,
    CLOCKWISE
  }

  /** How X of parts on the bottom side is written. */
  public enum BottomX {
    /** Negated when every bottom part is at negative X and no top part is. */
    DETECT,
    AS_TOP,
    NEGATED
  }

  public PlacementFormat withUnit(LengthUnit wanted) {
    return new PlacementFormat(
        columns, Optional.of(wanted), rotation, bottomX, originXMillimetres, originYMillimetres);
  }

  public PlacementFormat withRotation(RotationSense wanted) {
    return new PlacementFormat(
        columns, unit, wanted, bottomX, originXMillimetres, originYMillimetres);
  }

  public PlacementFormat withBottomX(BottomX wanted) {
    return new PlacementFormat(
        columns, unit, rotation, wanted, originXMillimetres, originYMillimetres);
  }

  public PlacementFormat withColumns(PlacementColumns wanted) {
    return new PlacementFormat(
        wanted, unit, rotation, bottomX, originXMillimetres, originYMillimetres);
  }
}
