package railglow.report;

import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import com.openhtmltopdf.render.DefaultObjectDrawerFactory;
import com.openhtmltopdf.util.XRLog;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.Map;
import java.util.regex.Pattern;
import org.apache.pdfbox.pdmodel.font.FontMappers;
import railglow.report.draw.Paint;
import railglow.report.draw.Sketch;
import railglow.units.Probability;

/**
 * XHTML pages as PDF; figures are drawn as lines and pixels, not as pictures of them. Stateless.
 */
final class PdfPages {
  private static final SpareFont FONTS = new SpareFont();

  /** Characters that XML 1.0 can't hold, whatever a user's file has in it. */
  private static final Pattern NOT_XML =
      Pattern.compile("[^\\x09\\x0A\\x0D\\x20-\\uD7FF\\uE000-\\uFFFD\\x{10000}-\\x{10FFFF}]");

  private static final Pattern EXPONENT =
      Pattern.compile("\\u207b?[" + Probability.SUPERSCRIPTS + "]+");

  private PdfPages() {}

  /**
   * Makes a PDF.
   *
   * @param xhtml well-formed; a figure is {@code <object type="railglow/sketch" data="name"/>}
   */
  static byte[] of(String xhtml, Map<String, Sketch> figures) throws IOException {
    XRLog.setLoggingEnabled(false);
    FontMappers.set(FONTS);
    DefaultObjectDrawerFactory drawers = new DefaultObjectDrawerFactory();
    drawers.registerDrawer(
        "railglow/sketch",
        (element, x, y, width, height, device, context, dotsPerPixel) -> {
          Sketch sketch = figures.get(element.getAttribute("data"));
          device.drawWithGraphics(
              (float) x,
              (float) y,
              (float) width / dotsPerPixel,
              (float) height / dotsPerPixel,
              graphics -> {
                double scale = width / dotsPerPixel / sketch.width();
                graphics.scale(scale, scale);
                Paint.draw(sketch, graphics);
              });
          return null;
        });
    ByteArrayOutputStream pdf = new ByteArrayOutputStream();
    PdfRendererBuilder builder = new PdfRendererBuilder();
    builder.useFont(SpareFont::stream, "Spare");
    builder.useObjectDrawerFactory(drawers);
    // a page is whole in itself: nothing is ever fetched for it
    builder.useUriResolver((base, uri) -> null);
    builder.withProducer("Railglow");
    builder.withHtmlContent(raised(NOT_XML.matcher(xhtml).replaceAll("?")), null);
    builder.toStream(pdf);
    builder.run();
    return pdf.toByteArray();
  }

  /** Exponents as raised digits of the font itself: few fonts have all letters for them. */
  static String raised(String xhtml) {
    return EXPONENT
        .matcher(xhtml)
        .replaceAll(
            match -> {
              StringBuilder digits = new StringBuilder("<sup>");
              for (char c : match.group().toCharArray()) {
                digits.append(c == '\u207b' ? "\u2212" : "" + Probability.SUPERSCRIPTS.indexOf(c));
              }
              return digits.append("</sup>").toString();
            });
  }
}
