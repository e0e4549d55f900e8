package railglow.board.examples;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import railglow.board.geometry.Outline;

/** Where the pads of a part are, by its package; on the board, after rotation. */
final class PadPlan {
  private static final Pattern SIZE = Pattern.compile("(\\d+(?:\\.\\d+)?)x(\\d+(?:\\.\\d+)?)");

  /** A pad: place, size and turn in mm and degrees. */
  record PadPlace(
      double x, double y, double width, double height, double rotation, boolean drilled) {}

  private final ExamplePart part;
  private final List<PadPlace> pads = new ArrayList<>();

  private PadPlan(ExamplePart part) {
    this.part = part;
  }

  static List<PadPlace> of(ExamplePart part) {
    PadPlan plan = new PadPlan(part);
    plan.lay();
    return plan.pads;
  }

  private void lay() {
    String name = part.packageName();
    int pins = part.nets().size();
    Outline outline = part.outline();
    double w = outline.widthMillimetres();
    double h = outline.heightMillimetres();
    if (name.startsWith("TERM-")) {
      for (int i = 0; i < pins; i++) {
        drilled((i - (pins - 1) / 2.0) * 5.08, -0.5, 2.4);
      }
    } else if (name.startsWith("HDR-")) {
      for (int i = 0; i < pins; i++) {
        drilled(0, ((pins - 1) / 2.0 - i) * 2.54, 1.7);
      }
    } else if (name.startsWith("CP_Radial")) {
      drilled(-2.5, 0, 1.8);
      drilled(2.5, 0, 1.8);
    } else if (name.startsWith("RELAY")) {
      drilled(-8, -5.5, 2.2);
      drilled(-8, 5.5, 2.2);
      drilled(7.5, 0, 2.4);
      drilled(4, 5.5, 2.4);
      drilled(4, -5.5, 2.4);
    } else if (name.startsWith("SOT-223")) {
      rows(List.of(-2.3, 0.0, 2.3), w / 2 - 0.7, 1.4, 1.2);
      pad(w / 2 - 0.7, 0, 1.4, 3.4);
    } else if (name.equals("SOT-23")) {
      pad(-w / 2 + 0.35, 0.95, 0.9, 0.7);
      pad(-w / 2 + 0.35, -0.95, 0.9, 0.7);
      pad(w / 2 - 0.35, 0, 0.9, 0.7);
    } else if (name.startsWith("LQFP") || name.startsWith("QFN")) {
      around(pins(name, pins), w, h, name.startsWith("QFN") ? 0.7 : 1.4);
    } else if (name.startsWith("BGA")) {
      balls(pins, w);
    } else if (pins > 2) {
      twoRows(pins, w, h);
    } else {
      double pad = Math.min(h, Math.max(0.4, w * 0.28));
      double width = Math.max(0.5, w * 0.3);
      pad(-w / 2 + width / 2 - 0.1, 0, width, h);
      pad(w / 2 - width / 2 + 0.1, 0, width, Math.max(pad, h));
    }
  }

  private static int pins(String name, int atLeast) {
    Matcher matcher = Pattern.compile("-(\\d+)").matcher(name);
    return matcher.find() ? Integer.parseInt(matcher.group(1)) : atLeast;
  }

  private void rows(List<Double> ys, double x, double width, double height) {
    for (int i = ys.size() - 1; i >= 0; i--) {
      pad(-x, ys.get(i), width, height);
    }
  }

  /** Pins down the left side, then up the right side. */
  private void twoRows(int pins, double w, double h) {
    int left = (pins + 1) / 2;
    boolean module = part.packageName().startsWith("MOD");
    double pitch =
        module ? (h - 4) / (left - 1) : Math.min(1.27, (h - 0.6) / Math.max(1, left - 1));
    double width = part.packageName().startsWith("XTAL") ? 1.2 : 1.3;
    double height = pitch * 0.55;
    for (int i = 0; i < pins; i++) {
      boolean onLeft = i < left;
      int index = onLeft ? i : i - left;
      int rows = onLeft ? left : pins - left;
      double y = ((rows - 1) / 2.0 - index) * (rows == 2 && left == 3 ? 2 * pitch : pitch);
      pad((onLeft ? -1 : 1) * (w / 2 - width / 2 + 0.1), onLeft ? y : -y, width, height);
    }
  }

  /** Counter-clockwise from the upper end of the left side. */
  private void around(int pins, double w, double h, double length) {
    int side = pins / 4;
    int rest = pins - 4 * side;
    int[] perSide = {side + rest / 2, side, side + rest / 2, side};
    double pitch = Math.min(0.5, (w - 1) / Math.max(1, side));
    for (int s = 0; s < 4; s++) {
      for (int i = 0; i < perSide[s]; i++) {
        double along = (i - (perSide[s] - 1) / 2.0) * pitch;
        double out = (s % 2 == 0 ? w : h) / 2 - length / 2 + 0.1;
        switch (s) {
          case 0 -> pad(-out, -along, length, pitch * 0.55);
          case 1 -> pad(along, -out, pitch * 0.55, length);
          case 2 -> pad(out, along, length, pitch * 0.55);
          default -> pad(-along, out, pitch * 0.55, length);
        }
      }
    }
  }

  private void balls(int pins, double w) {
    Matcher size = SIZE.matcher(part.packageName());
    int across = (int) Math.round(Math.sqrt(pins));
    double pitch = size.find() ? w / (across + 0.5) : 0.8;
    for (int i = 0; i < pins; i++) {
      double column = i % across - (across - 1) / 2.0;
      double row = (across - 1) / 2.0 - i / across;
      pad(column * pitch, row * pitch, pitch * 0.5, pitch * 0.5);
    }
  }

  private void drilled(double x, double y, double diameter) {
    add(x, y, diameter, diameter, true);
  }

  private void pad(double x, double y, double width, double height) {
    add(x, y, width, height, false);
  }

  private void add(double x, double y, double width, double height, boolean drilled) {
    double cos = Math.cos(Math.toRadians(part.rotation()));
    double sin = Math.sin(Math.toRadians(part.rotation()));
    pads.add(
        new PadPlace(
            part.x() + x * cos - y * sin,
            part.y() + x * sin + y * cos,
            width,
            height,
            part.rotation(),
            drilled));
  }
}
