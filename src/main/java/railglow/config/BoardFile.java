package railglow.config;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import railglow.board.Board;
import railglow.board.BoardPicture;
import railglow.board.Entered;
import railglow.board.Part;
import railglow.board.PartAssembly;
import railglow.board.Rail;
import railglow.board.RailNets;
import railglow.board.Side;
import railglow.board.geometry.PackageOutline;
import railglow.board.geometry.Registration;
import railglow.board.geometry.RegistrationChoice;
import railglow.board.geometry.RegistrationException;
import railglow.board.geometry.RegistrationPoint;
import railglow.board.imports.ImportException;
import railglow.board.imports.Netlist;
import railglow.board.imports.NetlistReader;
import railglow.board.imports.Placement;
import railglow.board.imports.PlacementReader;
import railglow.board.places.Place;
import railglow.board.places.PlaceReader;
import railglow.units.Unit;

/**
 * Reads a board file with the placement, netlist and picture it names. What the board file leaves
 * out becomes a gap of the board; what it says wrongly is a problem with file and line.
 */
public final class BoardFile {
  private static final double LARGEST_METRES = 1.0;
  private static final double FARTHEST_PIXEL = 20_000;
  private static final double NONE = Double.NaN;
  private static final long MAX_BYTES = 64L << 20;

  private final Path path;
  private final ConfigSection root;
  private final Map<String, Path> used = new TreeMap<>();
  private final List<String> gaps = new ArrayList<>();
  private final List<String> notes = new ArrayList<>();

  private BoardFile(Path path, ConfigSection root) {
    this.path = path;
    this.root = root;
  }

  /**
   * @throws ConfigException listing everything that is wrong with the file or the files it names
   */
  public static LoadedBoard read(Path path) throws ConfigException {
    ConfigFile file = ConfigFile.read(path).as(FileKind.BOARD);
    BoardFile reader = new BoardFile(path, file.root());
    reader.used.put("board", path);
    Board board = reader.board();
    List<Place> places = reader.places(board);
    file.finish();
    return new LoadedBoard(board, places, Entered.NOTHING, reader.used);
  }

  private Board board() {
    String name = root.text("name");
    ConfigSection size = root.section("size");
    double width = size.quantity("width", Unit.METRE, 0.002, LARGEST_METRES) * 1e3;
    double height = size.quantity("height", Unit.METRE, 0.002, LARGEST_METRES) * 1e3;
    Side viewed = root.optionalChoice("viewed", Side.class).orElse(Side.TOP);
    Map<String, String> nets = new TreeMap<>();
    List<Rail> rails = BoardRails.read(root, nets, gaps);
    Map<String, PackageOutline> sizes = sizes();
    Optional<Placement> placement = placement();
    Optional<Netlist> netlist = netlist();
    PartAssembly parts = PartAssembly.of(placement, netlist, sizes);
    gaps.addAll(parts.gaps());
    notes.addAll(parts.notes());
    Optional<Netlist> named = parts.netlist().map(list -> RailNets.named(list, rails, nets, gaps));
    return new Board(
        name,
        width,
        height,
        viewed,
        rails,
        withNets(parts.parts(), named),
        named,
        registration(),
        picture(),
        BoardCareFile.read(root, rails, parts.parts()),
        gaps,
        notes);
  }

  private List<Place> places(Board board) {
    List<Place> places = new ArrayList<>();
    for (String text : root.texts("places")) {
      try {
        places.add(PlaceReader.parse(text, board));
      } catch (IllegalArgumentException e) {
        root.report("places", e.getMessage());
      }
    }
    return places;
  }

  private static List<Part> withNets(List<Part> parts, Optional<Netlist> netlist) {
    return netlist.isEmpty()
        ? parts
        : parts.stream()
            .map(part -> part.withNets(netlist.get().netsOf(part.reference())))
            .toList();
  }

  private Map<String, PackageOutline> sizes() {
    Map<String, PackageOutline> sizes = new TreeMap<>();
    for (ConfigSection size : root.sections("sizes")) {
      sizes.put(
          size.text("package"),
          new PackageOutline(
              size.quantity("width", Unit.METRE, 1e-4, 0.3) * 1e3,
              size.quantity("height", Unit.METRE, 1e-4, 0.3) * 1e3));
    }
    return sizes;
  }

  private Optional<Placement> placement() {
    Optional<ConfigSection> section = root.optionalSection("placement");
    if (section.isEmpty()) {
      gaps.add("no placement file: parts can't be named by their place");
      return Optional.empty();
    }
    var format = BoardPlacement.format(section.get());
    Optional<byte[]> bytes = bytes(section.get(), "placement");
    try {
      return bytes.map(content -> PlacementReader.read(shown("placement"), content, format));
    } catch (ImportException e) {
      section.get().report("file", "can't be used: " + e.getMessage() + ". " + WITHOUT_PLACEMENT);
      return Optional.empty();
    }
  }

  private static final String WITHOUT_PLACEMENT =
      "Without a placement section the hunt still finds the heat's place, but names no part";

  private static final String WITHOUT_NETLIST =
      "Without a netlist section parts are still named by place, but not told apart by rail";

  private Optional<Netlist> netlist() {
    Optional<ConfigSection> section = root.optionalSection("netlist");
    if (section.isEmpty()) {
      gaps.add("no netlist: parts are named by place only, whatever rail they are on");
      return Optional.empty();
    }
    Optional<byte[]> bytes = bytes(section.get(), "netlist");
    try {
      return bytes.map(content -> NetlistReader.read(shown("netlist"), content));
    } catch (ImportException e) {
      section.get().report("file", "can't be used: " + e.getMessage() + ". " + WITHOUT_NETLIST);
      return Optional.empty();
    }
  }

  private Optional<Registration> registration() {
    Optional<ConfigSection> section = root.optionalSection("registration");
    if (section.isEmpty()) {
      gaps.add("no registration points: heat is placed in pixels, parts can't be named");
      return Optional.empty();
    }
    double accuracy = section.get().optionalQuantity("accuracy", Unit.PIXEL, 0.001, 20).orElse(0.5);
    List<RegistrationPoint> points = new ArrayList<>();
    for (ConfigSection point : section.get().sections("points")) {
      points.add(
          new RegistrationPoint(
              point.text("name"),
              point.quantity("x", Unit.METRE, -LARGEST_METRES, LARGEST_METRES) * 1e3,
              point.quantity("y", Unit.METRE, -LARGEST_METRES, LARGEST_METRES) * 1e3,
              point.quantity("column", Unit.PIXEL, -FARTHEST_PIXEL, FARTHEST_PIXEL),
              point.quantity("row", Unit.PIXEL, -FARTHEST_PIXEL, FARTHEST_PIXEL)));
    }
    try {
      RegistrationChoice choice =
          RegistrationChoice.of(
              points,
              accuracy,
              section.get().optionalQuantity("width", Unit.PIXEL, 2, FARTHEST_PIXEL).orElse(NONE),
              section.get().optionalQuantity("height", Unit.PIXEL, 2, FARTHEST_PIXEL).orElse(NONE));
      notes.addAll(choice.notes());
      return Optional.of(choice.registration());
    } catch (RegistrationException e) {
      gaps.add(
          "the registration can't be used: "
              + e.getMessage()
              + "; heat is placed in pixels, parts can't be named");
      return Optional.empty();
    }
  }

  private Optional<BoardPicture> picture() {
    Optional<ConfigSection> section = root.optionalSection("picture");
    if (section.isEmpty()) {
      return Optional.empty();
    }
    String file = section.get().text("file");
    double left = section.get().quantity("left", Unit.PIXEL, -FARTHEST_PIXEL, FARTHEST_PIXEL);
    double bottom = section.get().quantity("bottom", Unit.PIXEL, -FARTHEST_PIXEL, FARTHEST_PIXEL);
    double scale = section.get().number("pixels-per-millimetre", 0.1, 1000);
    Path resolved = sibling(file);
    if (!Files.isRegularFile(resolved)) {
      gaps.add("the board picture " + file + " is not there: reports show parts as outlines only");
      return Optional.empty();
    }
    used.put("picture", resolved);
    return Optional.of(new BoardPicture(file, left, bottom, scale));
  }

  private Optional<byte[]> bytes(ConfigSection section, String role) {
    String file = section.text("file");
    if (file.isEmpty()) {
      return Optional.empty();
    }
    Path resolved = sibling(file);
    try {
      if (Files.size(resolved) > MAX_BYTES) {
        section.report("file", "is larger than 64 MiB; that can't be a " + role);
        return Optional.empty();
      }
      used.put(role, resolved);
      return Optional.of(Files.readAllBytes(resolved));
    } catch (NoSuchFileException e) {
      section.report("file", "does not exist: " + resolved);
    } catch (IOException e) {
      section.report("file", "can't be read: " + e.getMessage());
    }
    return Optional.empty();
  }

  private String shown(String role) {
    return used.get(role).getFileName().toString();
  }

  private Path sibling(String relative) {
    return path.toAbsolutePath().getParent().resolve(relative).normalize();
  }
}
