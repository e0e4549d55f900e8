package railglow.config;

import java.util.Optional;
import railglow.board.imports.LengthUnit;
import railglow.board.imports.PlacementColumns;
import railglow.board.imports.PlacementFormat;
import railglow.board.imports.PlacementFormat.BottomX;
import railglow.board.imports.PlacementFormat.RotationSense;
import railglow.units.Unit;

/** Reads how a board file wants its placement table understood. */
final class BoardPlacement {
  private static final double FARTHEST_METRES = 10;

  private BoardPlacement() {}

  static PlacementFormat format(ConfigSection section) {
    Optional<ConfigSection> origin = section.optionalSection("origin");
    return new PlacementFormat(
        columns(section.optionalSection("columns")),
        unit(section),
        section
            .optionalChoice("rotation", RotationSense.class)
            .orElse(RotationSense.COUNTER_CLOCKWISE),
        section.optionalChoice("bottom-x", BottomX.class).orElse(BottomX.DETECT),
        origin.map(o -> o.quantity("x", Unit.METRE, -FARTHEST_METRES, FARTHEST_METRES)).orElse(0.0)
            * 1e3,
        origin.map(o -> o.quantity("y", Unit.METRE, -FARTHEST_METRES, FARTHEST_METRES)).orElse(0.0)
            * 1e3);
  }

  private static Optional<LengthUnit> unit(ConfigSection section) {
    Optional<String> text = section.optionalText("unit");
    Optional<LengthUnit> unit = text.flatMap(LengthUnit::named);
    if (text.isPresent() && unit.isEmpty()) {
      section.report("unit", "is '" + text.get() + "'; allowed is mm, inch or mil");
    }
    return unit;
  }

  private static PlacementColumns columns(Optional<ConfigSection> section) {
    return section
        .map(
            columns ->
                new PlacementColumns(
                    columns.optionalText("reference"),
                    columns.optionalText("value"),
                    columns.optionalText("package"),
                    columns.optionalText("x"),
                    columns.optionalText("y"),
                    columns.optionalText("rotation"),
                    columns.optionalText("side")))
        .orElse(PlacementColumns.RECOGNISED);
  }
}
