package railglow.sim;

import java.util.List;
import java.util.Optional;
import railglow.sim.heat.BoardHeat;
import railglow.sim.heat.PlacedPart;
import railglow.sim.heat.PlateMaterial;
import railglow.sim.heat.SurfaceLoss;
import railglow.sim.heat.ThinPlate;
import railglow.sim.picture.BoardScene;
import railglow.sim.picture.BoardView;
import railglow.sim.picture.Reflection;

/**
 * The board as heat and picture know it.
 *
 * @param widthMillimetres along x
 * @param heightMillimetres along y
 * @param cellMillimetres of the heat grid
 * @param emissivity of the solder mask
 * @param mirroredRiseKelvin how much warmer than the room its mirrored surroundings are
 * @param coatSeconds time constant of a protective coat between the parts and the camera; 0 for
 *     none
 * @param view the true projection to the picture
 */
public record BoardLayout(
    double widthMillimetres,
    double heightMillimetres,
    double cellMillimetres,
    PlateMaterial material,
    List<PlacedPart> parts,
    double emissivity,
    double mirroredRiseKelvin,
    double coatSeconds,
    BoardView view) {
  /** Both faces of a part to the room, radiation and air, W/(m^2 K); a typical value. */
  private static final double PART_LOSS = 10;

  public BoardLayout {
    parts = List.copyOf(parts);
  }

  public BoardLayout withParts(List<PlacedPart> newParts) {
    return new BoardLayout(
        widthMillimetres,
        heightMillimetres,
        cellMillimetres,
        material,
        newParts,
        emissivity,
        mirroredRiseKelvin,
        coatSeconds,
        view);
  }

  public BoardLayout withView(BoardView newView) {
    return new BoardLayout(
        widthMillimetres,
        heightMillimetres,
        cellMillimetres,
        material,
        parts,
        emissivity,
        mirroredRiseKelvin,
        coatSeconds,
        newView);
  }

  public BoardLayout withCoatSeconds(double seconds) {
    return new BoardLayout(
        widthMillimetres,
        heightMillimetres,
        cellMillimetres,
        material,
        parts,
        emissivity,
        mirroredRiseKelvin,
        seconds,
        view);
  }

  public Optional<PlacedPart> part(String name) {
    return parts.stream().filter(part -> part.name().equals(name)).findFirst();
  }

  /** Column of a part's centre in the picture. */
  public double column(PlacedPart part) {
    return view.column(part.xMetres() * 1e3, part.yMetres() * 1e3);
  }

  /** Row of a part's centre in the picture. */
  public double row(PlacedPart part) {
    return view.row(part.xMetres() * 1e3, part.yMetres() * 1e3);
  }

  BoardHeat newHeat(double roomCelsius) {
    double cell = cellMillimetres * 1e-3;
    SurfaceLoss loss =
        SurfaceLoss.levelPlateInAir(
            Math.sqrt(widthMillimetres * heightMillimetres) * 1e-3,
            emissivity,
            roomCelsius + 273.15);
    ThinPlate plate =
        new ThinPlate(
            (int) Math.round(widthMillimetres / cellMillimetres),
            (int) Math.round(heightMillimetres / cellMillimetres),
            cell,
            material,
            loss);
    return new BoardHeat(plate, parts, PART_LOSS);
  }

  BoardScene newScene(BoardHeat heat, int width, int height, Reflection reflection) {
    return new BoardScene(
        width, height, heat, view, emissivity, mirroredRiseKelvin, coatSeconds, reflection);
  }
}
