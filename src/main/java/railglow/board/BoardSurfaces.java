package railglow.board;

import java.util.List;
import java.util.Optional;
import railglow.board.places.Place;
import railglow.thermal.radiometry.Surface;

/**
 * How well places of the board radiate. Immutable.
 *
 * @param reflectedCelsius temperature of what the board mirrors
 * @param reflectedSigmaKelvin how well that is known
 * @param reflectedFrom where that is known from, such as "measured at foil"
 * @param areas stated by the board file; the first that holds a place counts
 * @param reflector crumpled foil laid beside the board, at which it is measured
 */
public record BoardSurfaces(
    double reflectedCelsius,
    double reflectedSigmaKelvin,
    String reflectedFrom,
    List<Area> areas,
    Optional<Place> reflector) {
  /** Where the board file states none. */
  public static final String SUPPOSED = "supposed";

  /** Where somebody states it for a run. */
  public static final String ENTERED = "entered";

  public static final String STATED = "by the board file";

  /** The room, and every surface by its kind. */
  public static final BoardSurfaces USUAL =
      new BoardSurfaces(23, 3, SUPPOSED, List.of(), Optional.empty());

  /** Solder mask; from memory of the trade's ranges 0.85 to 0.95, no source. */
  private static final Kind MASK = new Kind("solder mask", 0.90, 0.03);

  public BoardSurfaces {
    areas = List.copyOf(areas);
  }

  BoardSurfaces withReflected(double celsius, double sigmaKelvin, String from) {
    return new BoardSurfaces(celsius, sigmaKelvin, from, areas, reflector);
  }

  /** As somebody read it off a thermometer this time: it goes before the reflector. */
  BoardSurfaces entered(double celsius, double sigmaKelvin) {
    return new BoardSurfaces(celsius, sigmaKelvin, ENTERED, areas, Optional.empty());
  }

  /** An area of one emissivity, axis-aligned, board millimetres. */
  public record Area(
      String name,
      double leftMillimetres,
      double lowMillimetres,
      double rightMillimetres,
      double highMillimetres,
      double emissivity,
      double emissivitySigma) {
    boolean holds(double x, double y) {
      return x >= leftMillimetres
          && x <= rightMillimetres
          && y >= lowMillimetres
          && y <= highMillimetres;
    }
  }

  private record Kind(String name, double emissivity, double sigma) {}

  /**
   * A surface and what it is called.
   *
   * @param name for example "solder mask" or an area's name
   */
  public record Named(String name, Surface surface) {}

  /** What the camera sees at a place: a stated area, a part's body, or the board itself. */
  public Named at(Board board, double xMillimetres, double yMillimetres) {
    for (Area area : areas) {
      if (area.holds(xMillimetres, yMillimetres)) {
        return named(new Kind(area.name(), area.emissivity(), area.emissivitySigma()));
      }
    }
    return board.parts().stream()
        .filter(part -> part.side() == board.viewed())
        .filter(part -> Board.outline(part).contains(xMillimetres, yMillimetres))
        .findFirst()
        .map(part -> named(kind(part)))
        .orElseGet(() -> named(MASK));
  }

  private Named named(Kind kind) {
    return new Named(
        kind.name(),
        new Surface(kind.emissivity(), kind.sigma(), reflectedCelsius, reflectedSigmaKelvin));
  }

  /** Ranges of the trade from memory, no source: plastics and ceramics high, metal cans low. */
  private static Kind kind(Part part) {
    return switch (PartKind.of(part.reference())) {
      case CAPACITOR ->
          Math.max(part.widthMillimetres(), part.heightMillimetres()) > 5.5
              ? new Kind("metal can of " + part.reference(), 0.25, 0.15)
              : new Kind("ceramic body of " + part.reference(), 0.90, 0.04);
      case CRYSTAL, MODULE -> new Kind("metal lid of " + part.reference(), 0.2, 0.12);
      case CONNECTOR -> new Kind("body of " + part.reference(), 0.9, 0.05);
      default -> new Kind("body of " + part.reference(), 0.92, 0.03);
    };
  }
}
