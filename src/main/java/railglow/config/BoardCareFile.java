package railglow.config;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import railglow.board.BoardCare;
import railglow.board.BoardPlate;
import railglow.board.BoardSurfaces;
import railglow.board.Part;
import railglow.board.PartLimit;
import railglow.board.Rail;
import railglow.board.RelatedCheck;
import railglow.board.places.Place;
import railglow.board.places.PlaceReader;
import railglow.units.Unit;

/** Reads delicate parts, related checks and surfaces of a board file. */
final class BoardCareFile {
  private BoardCareFile() {}

  static BoardCare read(ConfigSection root, List<Rail> rails, List<Part> parts) {
    return new BoardCare(
        partLimits(root, parts),
        relatedChecks(root, rails, parts),
        surfaces(root),
        plate(root),
        List.of());
  }

  private static List<PartLimit> partLimits(ConfigSection root, List<Part> parts) {
    List<PartLimit> limits = new ArrayList<>();
    for (ConfigSection section : root.sections("part-limits")) {
      String reference = section.text("part");
      if (!parts.isEmpty() && !known(parts, reference)) {
        section.report("part", "is '" + reference + "', which the placement does not know");
      }
      var volts = section.optionalQuantity("highest", Unit.VOLT, 0.01, 60);
      var amperes = section.optionalQuantity("most-current", Unit.AMPERE, 0.001, 30);
      if (volts.isEmpty() && !section.has("highest") && !section.has("most-current")) {
        section.report("part", "limits nothing; give 'highest', 'most-current' or both");
      }
      limits.add(
          new PartLimit(
              reference,
              volts.orElse(Double.POSITIVE_INFINITY),
              amperes.orElse(Double.POSITIVE_INFINITY)));
    }
    return limits;
  }

  private static List<RelatedCheck> relatedChecks(
      ConfigSection root, List<Rail> rails, List<Part> parts) {
    List<RelatedCheck> checks = new ArrayList<>();
    for (ConfigSection section : root.sections("related-checks")) {
      String when = section.text("when");
      if (!isRail(rails, when) && !parts.isEmpty() && !known(parts, when)) {
        section.report("when", "is '" + when + "', which is no rail and no part of this board");
      }
      List<String> read = section.texts("read");
      for (String rail : read) {
        if (!isRail(rails, rail)) {
          section.report("read", "names '" + rail + "', which is no rail of this board");
        }
      }
      if (read.isEmpty()) {
        section.report("read", "must list the rails to read too");
      }
      checks.add(new RelatedCheck(when, read, section.text("why")));
    }
    return checks;
  }

  private static BoardSurfaces surfaces(ConfigSection root) {
    Optional<ConfigSection> section = root.optionalSection("surfaces");
    if (section.isEmpty()) {
      return BoardSurfaces.USUAL;
    }
    List<BoardSurfaces.Area> areas = new ArrayList<>();
    for (ConfigSection area : section.get().sections("areas")) {
      double left = millimetres(area, "left");
      double low = millimetres(area, "low");
      areas.add(
          new BoardSurfaces.Area(
              area.text("name"),
              left,
              low,
              left + millimetres(area, "width"),
              low + millimetres(area, "height"),
              area.number("emissivity", 0.01, 1),
              area.optionalNumber("error", 0, 0.5).orElse(0.03)));
    }
    var reflected = EnteredFile.reflectedCelsius(section.get());
    return new BoardSurfaces(
        reflected.orElse(BoardSurfaces.USUAL.reflectedCelsius()),
        EnteredFile.reflectedSigmaKelvin(section.get())
            .orElse(BoardSurfaces.USUAL.reflectedSigmaKelvin()),
        reflected.isPresent() ? BoardSurfaces.STATED : BoardSurfaces.SUPPOSED,
        areas,
        reflector(section.get()));
  }

  private static Optional<Place> reflector(ConfigSection surfaces) {
    Optional<String> text = surfaces.optionalText("reflector");
    if (text.isEmpty()) {
      return Optional.empty();
    }
    String wanted = "it must be the area of the foil, 'foil=area 2 px, 2 px, 14 px, 10 px'";
    try {
      Place place = PlaceReader.parse(text.get(), null);
      if (place.shape() == Place.Shape.AREA) {
        return Optional.of(place);
      }
      surfaces.report("reflector", "is '" + text.get() + "'; " + wanted);
    } catch (IllegalArgumentException e) {
      surfaces.report("reflector", "can't be read: " + e.getMessage() + "; " + wanted);
    }
    return Optional.empty();
  }

  private static BoardPlate plate(ConfigSection root) {
    Optional<ConfigSection> section = root.optionalSection("plate");
    if (section.isEmpty()) {
      return BoardPlate.USUAL;
    }
    double thickness = section.get().quantity("thickness", Unit.METRE, 1e-4, 1e-2) * 1e3;
    double copper = section.get().quantity("copper", Unit.METRE, 0, 2e-3) * 1e3;
    if (!(copper < thickness)) {
      section.get().report("copper", "is " + copper + " mm, as thick as the board or thicker");
      return BoardPlate.USUAL;
    }
    return new BoardPlate(thickness, copper, true);
  }

  private static double millimetres(ConfigSection section, String key) {
    return section.quantity(key, Unit.METRE, -1, 1) * 1e3;
  }

  private static boolean known(List<Part> parts, String reference) {
    return parts.stream().anyMatch(part -> part.reference().equals(reference));
  }

  private static boolean isRail(List<Rail> rails, String name) {
    return rails.stream().anyMatch(rail -> rail.name().equalsIgnoreCase(name));
  }
}
