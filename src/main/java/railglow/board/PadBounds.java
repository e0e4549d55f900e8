package railglow.board;

import java.util.List;
import railglow.board.imports.Pad;

/** The rectangle around some pads, their own sizes included, in millimetres. */
record PadBounds(double centreX, double centreY, double width, double height) {
  private static final double LEAST_MILLIMETRES = 0.3;

  static PadBounds of(List<Pad> pads) {
    double left = Double.POSITIVE_INFINITY;
    double right = Double.NEGATIVE_INFINITY;
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (Pad pad : pads) {
      double turn = StrictMath.toRadians(pad.rotationDegrees());
      double cos = Math.abs(StrictMath.cos(turn));
      double sin = Math.abs(StrictMath.sin(turn));
      double halfX = (pad.widthMillimetres() * cos + pad.heightMillimetres() * sin) / 2;
      double halfY = (pad.widthMillimetres() * sin + pad.heightMillimetres() * cos) / 2;
      left = Math.min(left, pad.xMillimetres() - halfX);
      right = Math.max(right, pad.xMillimetres() + halfX);
      low = Math.min(low, pad.yMillimetres() - halfY);
      high = Math.max(high, pad.yMillimetres() + halfY);
    }
    return new PadBounds(
        (left + right) / 2,
        (low + high) / 2,
        Math.max(LEAST_MILLIMETRES, right - left),
        Math.max(LEAST_MILLIMETRES, high - low));
  }
}
