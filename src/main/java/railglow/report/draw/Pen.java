package railglow.report.draw;

/**
 * How a shape is drawn.
 *
 * @param rgb of the line, 0xRRGGBB
 * @param width of the line; 0 for no line
 * @param dash length of dash and gap; 0 for a whole line
 * @param fill of the inside, 0xRRGGBB, or {@link #NO_FILL}
 * @param opacity of the fill, 0 to 1
 */
public record Pen(int rgb, double width, double dash, int fill, double opacity) {
  public static final int NO_FILL = -1;

  public static Pen line(int rgb, double width) {
    return new Pen(rgb, width, 0, NO_FILL, 0);
  }

  public static Pen dashed(int rgb, double width, double dash) {
    return new Pen(rgb, width, dash, NO_FILL, 0);
  }

  public static Pen fill(int rgb, double opacity) {
    return new Pen(0, 0, 0, rgb, opacity);
  }

  public Pen filled(int rgb, double fillOpacity) {
    return new Pen(this.rgb, width, dash, rgb, fillOpacity);
  }
}
