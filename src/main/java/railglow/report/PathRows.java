package railglow.report;

import java.util.List;
import java.util.Map;
import railglow.board.HeatPath;

/** Heat that is most likely of the current's way, for the report. Pure. */
final class PathRows {
  private PathRows() {}

  static List<Map<String, String>> of(List<HeatPath> paths) {
    return paths.stream()
        .map(
            path ->
                Map.of(
                    "source", Integer.toString(path.sourceIndex() + 1),
                    "place", path.place(),
                    "reason", path.reason()))
        .toList();
  }
}
