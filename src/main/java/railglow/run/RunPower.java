package railglow.run;

import java.util.List;
import java.util.Optional;
import railglow.board.Board;
import railglow.board.BoardPlate;
import railglow.board.Part;
import railglow.board.SuspectRanking;
import railglow.board.geometry.BoardPosition;
import railglow.board.geometry.Registration;
import railglow.journal.HeatPower;
import railglow.journal.RunHeader;
import railglow.run.reduction.Reduced;
import railglow.thermal.DetectionSettings;
import railglow.thermal.HeatSource;
import railglow.thermal.Look;
import railglow.thermal.PlaneNoise;
import railglow.thermal.inverse.PowerMap;
import railglow.thermal.inverse.PowerPlace;
import railglow.thermal.inverse.RiseMaps;
import railglow.thermal.inverse.SourceInversion;
import railglow.thermal.radiometry.Surface;

/** The map of heat sources of a run, where board and camera allow one. Pure and deterministic. */
public final class RunPower {
  /** Blur of a usual lens and of the pixel's own area; common practice, no source. */
  private static final double OPTICS_SIGMA_PIXELS = 0.7;

  /** Solder mask; taken where the source lies on bare metal, because its heat shows around it. */
  private static final double MASK_EMISSIVITY = 0.9;

  /** A place may lie this far outside a part's outline and still be called by it. */
  private static final double NEAR_MILLIMETRES = 1;

  private RunPower() {}

  /**
   * @param board null when no board file was given
   * @return empty without a source, a registration, or a camera that gives kelvin
   */
  public static Optional<PowerMap> map(RunHeader header, Reduced reduced, Board board) {
    Look look = reduced.look();
    if (board == null
        || board.registration().isEmpty()
        || look == null
        || look.sources().isEmpty()
        || Double.isNaN(header.camera().kelvinPerCount())) {
      return Optional.empty();
    }
    double sigmaI = PlaneNoise.sigma(look.inPhase());
    double sigmaC = PlaneNoise.sigma(look.quadrature());
    if (!(sigmaI > 0 && sigmaC > 0)) {
      return Optional.empty();
    }
    DetectionSettings detection = header.detection();
    BoardPosition at = SuspectRanking.position(board, look.sources().get(0));
    RiseMaps maps =
        new RiseMaps(
            look.inPhase(),
            look.quadrature(),
            sigmaI,
            sigmaC,
            1e-3 / pixelsPerMillimetre(board, at),
            OPTICS_SIGMA_PIXELS,
            emissivity(board, at),
            detection.periodSeconds(),
            detection.cameraTimeConstantSeconds(),
            look.oneLag());
    BoardPlate plate = board.care().plate();
    return SourceInversion.of(
        maps,
        plate.plate(),
        plate.stated(),
        look.sources().stream().mapToDouble(HeatSource::column).toArray(),
        look.sources().stream().mapToDouble(HeatSource::row).toArray());
  }

  /**
   * The same in the terms of findings.
   *
   * @param board that the map was made with
   */
  public static HeatPower describe(Optional<PowerMap> map, Board board) {
    if (map.isEmpty()) {
      return HeatPower.NONE;
    }
    PowerMap power = map.get();
    List<HeatPower.Place> places =
        power.places().stream().map(place -> place(place, board)).toList();
    double scaleError =
        power.places().stream()
            .mapToDouble(place -> PowerScale.relativeError(board, position(place, board)))
            .max()
            .orElse(PowerScale.BESIDE_OTHERS);
    return new HeatPower(
        power.seenWatts(),
        Math.hypot(power.noiseWatts(), scaleError * power.seenWatts()),
        power.resolutionMillimetres(),
        places);
  }

  private static BoardPosition position(PowerPlace place, Board board) {
    return board.registration().orElseThrow().toBoard(place.column(), place.row());
  }

  private static HeatPower.Place place(PowerPlace place, Board board) {
    BoardPosition at = position(place, board);
    String part =
        NearParts.nearestFirst(board, at).stream()
            .findFirst()
            .filter(nearest -> NearParts.distance(nearest, at) <= NEAR_MILLIMETRES)
            .map(Part::reference)
            .orElse("");
    return new HeatPower.Place(part, place.column(), place.row(), place.watts());
  }

  private static double pixelsPerMillimetre(Board board, BoardPosition at) {
    Registration registration = board.registration().orElseThrow();
    return registration.pixelsPerMillimetre(at.xMillimetres(), at.yMillimetres());
  }

  private static double emissivity(Board board, BoardPosition at) {
    Surface surface =
        board.care().surfaces().at(board, at.xMillimetres(), at.yMillimetres()).surface();
    return surface.isBareMetal() ? MASK_EMISSIVITY : surface.emissivity();
  }
}
