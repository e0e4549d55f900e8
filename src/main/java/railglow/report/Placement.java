package railglow.report;

import java.util.List;

/**
 * What the report knows of where parts are in the thermal picture.
 *
 * @param parts their outlines in pixels
 * @param millimetresPerPixel in the middle of the picture; NaN when not registered
 */
public record Placement(List<PartMark> parts, double millimetresPerPixel) {
  public static final Placement NONE = new Placement(List.of(), Double.NaN);

  public Placement {
    parts = List.copyOf(parts);
  }
}
