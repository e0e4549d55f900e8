package railglow.board;

import java.util.List;
import java.util.Optional;
import railglow.board.geometry.Outline;
import railglow.board.geometry.Registration;
import railglow.board.imports.Netlist;
import railglow.board.imports.Pad;

/**
 * The thing under repair, as its board file describes it. Immutable.
 *
 * @param name for example "HX-12 greenhouse irrigation controller"
 * @param widthMillimetres along x
 * @param heightMillimetres along y
 * @param viewed the side the cameras look at
 * @param rails in the board file's order
 * @param parts sorted by the file's order; empty when no placement is known
 * @param netlist in board coordinates, its nets called by the rails' names
 * @param registration ties the thermal picture to the board
 * @param picture of the board
 * @param care delicate parts, related checks, surfaces
 * @param gaps what is missing or could not be used and what that costs, one sentence each
 * @param notes what was assumed while reading, one sentence each
 */
public record Board(
    String name,
    double widthMillimetres,
    double heightMillimetres,
    Side viewed,
    List<Rail> rails,
    List<Part> parts,
    Optional<Netlist> netlist,
    Optional<Registration> registration,
    Optional<BoardPicture> picture,
    BoardCare care,
    List<String> gaps,
    List<String> notes) {
  public Board {
    rails = List.copyOf(rails);
    parts = List.copyOf(parts);
    gaps = List.copyOf(gaps);
    notes = List.copyOf(notes);
  }

  Board withCare(BoardCare other) {
    return new Board(
        name,
        widthMillimetres,
        heightMillimetres,
        viewed,
        rails,
        parts,
        netlist,
        registration,
        picture,
        other,
        gaps,
        notes);
  }

  /** A rail by its name, whatever its case. */
  public Optional<Rail> rail(String railName) {
    return rails.stream().filter(rail -> rail.name().equalsIgnoreCase(railName)).findFirst();
  }

  public Optional<Part> part(String reference) {
    return parts.stream().filter(part -> part.reference().equals(reference)).findFirst();
  }

  /** Parts with a pad on a rail; empty when no netlist is known. */
  public List<Part> partsOn(String railName) {
    return parts.stream().filter(part -> isOn(part, railName)).toList();
  }

  public boolean isOn(Part part, String railName) {
    return part.nets().stream().anyMatch(net -> net.equalsIgnoreCase(railName));
  }

  /** Pads and vias of a rail, in board coordinates; empty when no netlist is known. */
  public List<Pad> padsOn(String railName) {
    return netlist.map(list -> list.padsOn(railName)).orElse(List.of());
  }

  public static Outline outline(Part part) {
    return new Outline(
        part.xMillimetres(),
        part.yMillimetres(),
        part.widthMillimetres(),
        part.heightMillimetres(),
        part.rotationDegrees());
  }
}
