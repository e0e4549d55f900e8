package railglow.board.examples;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;

/** The forms of placement tables the example boards show. */
enum PlacementStyle {
  /** Quoted, commas, millimetres, bottom X as seen from the top. */
  PLAIN(StandardCharsets.UTF_8),
  /** As plain, X of bottom parts negated. */
  BOTTOM_NEGATED(StandardCharsets.UTF_8),
  /** Thousandths of an inch, T and B, clockwise. */
  MILS_CLOCKWISE(StandardCharsets.UTF_8),
  /** Tabs, UTF-16, units in the cells. */
  TABS_UTF16(StandardCharsets.UTF_16);

  private final Charset charset;

  PlacementStyle(Charset charset) {
    this.charset = charset;
  }

  Charset charset() {
    return charset;
  }
}
