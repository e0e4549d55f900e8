package railglow.report.draw;

import java.util.Base64;
import java.util.Locale;

/** A sketch as SVG text that stands alone: pictures inside it are PNG data. Stateless. */
public final class Svg {
  private static final String FONTS = "DejaVu Sans, Verdana, Helvetica, Arial, sans-serif";

  private Svg() {}

  /**
   * The element, ready to be put into a page.
   *
   * @param description for people who don't see it
   */
  public static String of(Sketch sketch, String description) {
    StringBuilder out = new StringBuilder(4096);
    out.append("<svg xmlns=\"http://www.w3.org/2000/svg\" role=\"img\" viewBox=\"0 0 ")
        .append(number(sketch.width()))
        .append(' ')
        .append(number(sketch.height()))
        .append("\" font-family=\"")
        .append(FONTS)
        .append("\"><title>")
        .append(escaped(description))
        .append("</title>\n");
    for (Shape shape : sketch.shapes()) {
      append(out, shape);
      out.append('\n');
    }
    return out.append("</svg>").toString();
  }

  private static void append(StringBuilder out, Shape shape) {
    if (shape instanceof Shape.Path path) {
      path(out, path);
    } else if (shape instanceof Shape.Ellipse ellipse) {
      ellipse(out, ellipse);
    } else if (shape instanceof Shape.Text text) {
      text(out, text);
    } else if (shape instanceof Shape.Raster raster) {
      raster(out, raster);
    }
  }

  private static void path(StringBuilder out, Shape.Path path) {
    out.append(path.closed() ? "<polygon" : "<polyline").append(" points=\"");
    for (int i = 0; i < path.xs().length; i++) {
      out.append(i == 0 ? "" : " ").append(number(path.xs()[i])).append(',');
      out.append(number(path.ys()[i]));
    }
    out.append('"');
    pen(out, path.pen());
    out.append("/>");
  }

  private static void ellipse(StringBuilder out, Shape.Ellipse e) {
    out.append("<ellipse cx=\"").append(number(e.x())).append("\" cy=\"").append(number(e.y()));
    out.append("\" rx=\"").append(number(e.halfX())).append("\" ry=\"").append(number(e.halfY()));
    out.append("\" transform=\"rotate(").append(number(e.tiltDegrees())).append(' ');
    out.append(number(e.x())).append(' ').append(number(e.y())).append(")\"");
    pen(out, e.pen());
    out.append("/>");
  }

  private static void text(StringBuilder out, Shape.Text t) {
    out.append("<text x=\"").append(number(t.x())).append("\" y=\"").append(number(t.y()));
    out.append("\" font-size=\"").append(number(t.size())).append("\" fill=\"");
    out.append(colour(t.rgb())).append('"');
    if (t.anchor() != Shape.Anchor.START) {
      out.append(" text-anchor=\"").append(t.anchor().name().toLowerCase(Locale.ROOT)).append('"');
    }
    if (t.bold()) {
      out.append(" font-weight=\"bold\"");
    }
    if (t.halo() != Pen.NO_FILL) {
      out.append(" stroke=\"").append(colour(t.halo())).append("\" stroke-width=\"");
      out.append(number(t.size() / 4)).append("\" stroke-linejoin=\"round\"");
      out.append(" paint-order=\"stroke\"");
    }
    out.append('>').append(escaped(t.text())).append("</text>");
  }

  private static void raster(StringBuilder out, Shape.Raster r) {
    out.append("<image x=\"").append(number(r.x())).append("\" y=\"").append(number(r.y()));
    out.append("\" width=\"").append(number(r.width())).append("\" height=\"");
    out.append(number(r.height())).append("\" preserveAspectRatio=\"none\"");
    out.append(" style=\"image-rendering:pixelated\" href=\"data:image/png;base64,");
    out.append(Base64.getEncoder().encodeToString(Png.of(r.image()))).append("\"/>");
  }

  private static void pen(StringBuilder out, Pen pen) {
    out.append(" fill=\"").append(pen.fill() == Pen.NO_FILL ? "none" : colour(pen.fill()));
    out.append('"');
    if (pen.fill() != Pen.NO_FILL && pen.opacity() < 1) {
      out.append(" fill-opacity=\"").append(number(pen.opacity())).append('"');
    }
    if (pen.width() > 0) {
      out.append(" stroke=\"").append(colour(pen.rgb())).append("\" stroke-width=\"");
      out.append(number(pen.width())).append("\" stroke-linejoin=\"round\"");
      if (pen.dash() > 0) {
        out.append(" stroke-dasharray=\"").append(number(pen.dash())).append('"');
      }
    }
  }

  private static String colour(int rgb) {
    return String.format(Locale.ROOT, "#%06x", rgb & 0xFFFFFF);
  }

  private static String number(double value) {
    String text = String.format(Locale.ROOT, "%.2f", value);
    return text.endsWith(".00") ? text.substring(0, text.length() - 3) : text;
  }

  /** Text as XML character data; characters that XML can't hold become question marks. */
  static String escaped(String text) {
    StringBuilder out = new StringBuilder(text.length());
    text.codePoints()
        .forEach(
            c -> {
              switch (c) {
                case '<' -> out.append("&lt;");
                case '>' -> out.append("&gt;");
                case '&' -> out.append("&amp;");
                case '"' -> out.append("&quot;");
                default -> out.appendCodePoint(isXml(c) ? c : '?');
              }
            });
    return out.toString();
  }

  private static boolean isXml(int c) {
    return c == '\t'
        || c == '\n'
        || c >= 0x20 && c < 0xD800
        || c >= 0xE000 && c < 0xFFFE
        || c > 0xFFFF;
  }
}
