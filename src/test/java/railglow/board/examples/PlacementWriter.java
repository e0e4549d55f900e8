package railglow.board.examples;

import java.util.List;
import java.util.Locale;
import railglow.board.Side;

/** Writes a placement table in the style of its board. */
final class PlacementWriter {
  private PlacementWriter() {}

  static byte[] bytes(ExampleBoard board) {
    PlacementStyle style = board.style();
    String text =
        switch (style) {
          case PLAIN, BOTTOM_NEGATED -> csv(board.parts(), style == PlacementStyle.BOTTOM_NEGATED);
          case MILS_CLOCKWISE -> mils(board.parts());
          case TABS_UTF16 -> tabs(board.parts());
        };
    return text.getBytes(style.charset());
  }

  private static String csv(List<ExamplePart> parts, boolean negated) {
    StringBuilder text = new StringBuilder("Ref,Val,Package,PosX,PosY,Rot,Side\n");
    for (ExamplePart part : parts) {
      boolean bottom = part.side() == Side.BOTTOM;
      text.append(
          String.format(
              Locale.ROOT,
              "%s,%s,%s,%.4f,%.4f,%.1f,%s\n",
              quoted(part.reference()),
              quoted(part.value()),
              quoted(part.packageName()),
              bottom && negated ? -part.x() : part.x(),
              part.y(),
              part.rotation(),
              bottom ? "bottom" : "top"));
    }
    return text.toString();
  }

  private static String mils(List<ExamplePart> parts) {
    StringBuilder text = new StringBuilder("Designator,Footprint,Mid X,Mid Y,Layer,Rotation\n");
    for (ExamplePart part : parts) {
      text.append(
          String.format(
              Locale.ROOT,
              "%s,%s,%.2f,%.2f,%s,%.1f\n",
              part.reference(),
              part.packageName(),
              part.x() / 0.0254,
              part.y() / 0.0254,
              part.side() == Side.TOP ? "T" : "B",
              (360 - part.rotation()) % 360));
    }
    return text.toString();
  }

  private static String tabs(List<ExamplePart> parts) {
    StringBuilder text =
        new StringBuilder("Designator\tFootprint\tMid X\tMid Y\tLayer\tRotation\tComment\n");
    for (ExamplePart part : parts) {
      text.append(
          String.format(
              Locale.ROOT,
              "%s\t%s\t%.3fmm\t%.3fmm\t%s\t%.1f\t%s\n",
              quoted(part.reference()),
              quoted(part.packageName()),
              part.x(),
              part.y(),
              part.side() == Side.TOP ? "T" : "B",
              part.rotation(),
              quoted(part.value())));
    }
    return text.toString();
  }

  static String quoted(String text) {
    return '"' + text.replace("\"", "\"\"") + '"';
  }
}
