package railglow.board.examples;

import java.util.List;
import java.util.Locale;
import railglow.board.Side;

/** Writes a placement table in the plainest of its forms. */
final class PlacementWriter {
  private PlacementWriter() {}

  static String csv(List<ExamplePart> parts) {
    StringBuilder text = new StringBuilder("Ref,Val,Package,PosX,PosY,Rot,Side\n");
    for (ExamplePart part : parts) {
      text.append(
          String.format(
              Locale.ROOT,
              "%s,%s,%s,%.4f,%.4f,%.1f,%s\n",
              quoted(part.reference()),
              quoted(part.value()),
              quoted(part.packageName()),
              part.x(),
              part.y(),
              part.rotation(),
              part.side() == Side.TOP ? "top" : "bottom"));
    }
    return text.toString();
  }

  static String quoted(String text) {
    return '"' + text.replace("\"", "\"\"") + '"';
  }
}
