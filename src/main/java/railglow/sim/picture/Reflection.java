package railglow.sim.picture;

/**
 * A warm thing mirrored in the board, such as a face or a hand, moving to and fro. It is seen only
 * as far as a surface does not emit.
 *
 * @param riseKelvin of the mirrored thing above the room; 0 for none
 * @param sigmaPixels its blurred size in the picture
 * @param centreColumn of its path
 * @param centreRow of its path
 * @param swingPixels how far it moves to each side
 * @param periodSeconds of its movement
 */
public record Reflection(
    double riseKelvin,
    double sigmaPixels,
    double centreColumn,
    double centreRow,
    double swingPixels,
    double periodSeconds) {
  public static final Reflection NONE = new Reflection(0, 1, 0, 0, 0, 1);

  double column(double seconds) {
    return centreColumn + swingPixels * Math.sin(2 * Math.PI * seconds / periodSeconds);
  }

  double row(double seconds) {
    return centreRow + 0.4 * swingPixels * Math.cos(2 * Math.PI * seconds / periodSeconds);
  }
}
