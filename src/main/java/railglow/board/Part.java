package railglow.board;

import java.util.Set;

/**
 * A placed part. Board coordinates: millimetres, x right, y up, seen from the top, origin at the
 * lower left corner of the board.
 *
 * @param reference for example C37
 * @param widthMillimetres of the body before rotation
 * @param rotationDegrees counter-clockwise seen from the top
 * @param nets the nets its pads are on; empty when no netlist is known
 */
public record Part(
    String reference,
    String value,
    String packageName,
    double xMillimetres,
    double yMillimetres,
    double widthMillimetres,
    double heightMillimetres,
    double rotationDegrees,
    Side side,
    Set<String> nets) {
  public Part {
    nets = Set.copyOf(nets);
  }
}
