package railglow.board.imports;

/**
 * One pad or via of a netlist.
 *
 * @param net as written, upper case, a {@code #n} at its end kept; empty when the pad has none
 * @param reference the part it belongs to; empty for a via
 * @param pin of that part; may be empty
 * @param xMillimetres in the netlist's own coordinates
 * @param yMillimetres likewise
 * @param widthMillimetres of the pad, 0 when not given
 * @param heightMillimetres of the pad; the width's value for a round one
 * @param rotationDegrees of the pad, counter-clockwise
 * @param access where it can be touched
 * @param drilled whether a hole goes through it
 * @param line of the file, from 1
 */
public record Pad(
    String net,
    String reference,
    String pin,
    double xMillimetres,
    double yMillimetres,
    double widthMillimetres,
    double heightMillimetres,
    double rotationDegrees,
    Access access,
    boolean drilled,
    int line) {
  /** The side a pad can be touched from. */
  public enum Access {
    BOTH,
    TOP,
    BOTTOM,
    /** On an inner layer, or not said. */
    NEITHER
  }

  public boolean isVia() {
    return reference.isEmpty();
  }

  public Pad at(double xMoved, double yMoved) {
    return new Pad(
        net,
        reference,
        pin,
        xMoved,
        yMoved,
        widthMillimetres,
        heightMillimetres,
        rotationDegrees,
        access,
        drilled,
        line);
  }

  public Pad on(String otherNet) {
    return settled(otherNet, access);
  }

  Pad settled(String settledNet, Access settledAccess) {
    return new Pad(
        settledNet,
        reference,
        pin,
        xMillimetres,
        yMillimetres,
        widthMillimetres,
        heightMillimetres,
        rotationDegrees,
        settledAccess,
        drilled,
        line);
  }
}
