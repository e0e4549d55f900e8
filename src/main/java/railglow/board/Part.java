package railglow.board;

import java.util.Collections;
import java.util.Set;
import java.util.TreeSet;

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
    // Sorted, so that whatever walks through them does so in the same order every time.
    nets = Collections.unmodifiableSet(new TreeSet<>(nets));
  }

  public Part withNets(Set<String> otherNets) {
    return new Part(
        reference,
        value,
        packageName,
        xMillimetres,
        yMillimetres,
        widthMillimetres,
        heightMillimetres,
        rotationDegrees,
        side,
        otherNets);
  }
}
