package railglow.cli;

import java.util.List;
import java.util.Locale;
import railglow.board.Board;
import railglow.board.BoardSurfaces.Area;
import railglow.thermal.radiometry.Surface;

/** Where the board file states bare metal: heat hides there. */
final class BareMetalText {
  private BareMetalText() {}

  /**
   * @param board null when none was given
   */
  static List<String> of(Board board) {
    if (board == null) {
      return List.of();
    }
    return board.care().surfaces().areas().stream()
        .filter(area -> area.emissivity() < Surface.BARE_METAL)
        .map(BareMetalText::line)
        .toList();
  }

  private static String line(Area area) {
    return String.format(
        Locale.ROOT,
        "Bare metal %s: only about %.0f %% of a rise there is seen; tape it if heat may lie under it",
        area.name(),
        100 * area.emissivity());
  }
}
