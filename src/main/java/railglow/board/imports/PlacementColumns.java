package railglow.board.imports;

import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Which header names which column. An empty one is recognised by its usual names.
 *
 * @param packageName the column of package or footprint names
 */
public record PlacementColumns(
    Optional<String> reference,
    Optional<String> value,
    Optional<String> packageName,
    Optional<String> x,
    Optional<String> y,
    Optional<String> rotation,
    Optional<String> side) {
  public static final PlacementColumns RECOGNISED =
      new PlacementColumns(
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty());

  /** The columns of a placement table; reference, x and y must be there. */
  enum Field {
    REFERENCE,
    VALUE,
    PACKAGE,
    X,
    Y,
    ROTATION,
    SIDE
  }

  // Names seen in placement files, bare of units, blanks and punctuation; the first found wins.
  private static final Map<Field, List<String>> USUAL =
      Map.of(
          Field.REFERENCE,
          List.of("ref", "designator", "refdes", "reference", "refdesignator", "part", "component"),
          Field.VALUE,
          List.of("val", "value", "comment", "partvalue"),
          Field.PACKAGE,
          List.of("package", "footprint", "pattern", "case", "packagename"),
          Field.X,
          List.of("posx", "midx", "centerx", "centrex", "xpos", "locationx", "xlocation", "x"),
          Field.Y,
          List.of("posy", "midy", "centery", "centrey", "ypos", "locationy", "ylocation", "y"),
          Field.ROTATION,
          List.of("rot", "rotation", "angle", "orientation", "r"),
          Field.SIDE,
          List.of("side", "layer", "tb", "mountside", "boardside", "s"));

  Optional<String> given(Field field) {
    return switch (field) {
      case REFERENCE -> reference;
      case VALUE -> value;
      case PACKAGE -> packageName;
      case X -> x;
      case Y -> y;
      case ROTATION -> rotation;
      case SIDE -> side;
    };
  }

  /** The index of a field's column among the headers; -1 when it is not there. */
  int find(Field field, List<Cell> headers) {
    Optional<String> wanted = given(field);
    if (wanted.isPresent()) {
      for (int i = 0; i < headers.size(); i++) {
        if (headers.get(i).text().equalsIgnoreCase(wanted.get().strip())) {
          return i;
        }
      }
      return -1;
    }
    List<String> bare = headers.stream().map(cell -> bare(cell.text())).toList();
    for (String name : USUAL.get(field)) {
      int at = bare.indexOf(name);
      if (at >= 0) {
        return at;
      }
    }
    return -1;
  }

  /** "Center-X(mm)" to "centerx". */
  private static String bare(String header) {
    StringBuilder letters = new StringBuilder();
    for (int i = 0; i < header.length(); i++) {
      char c = header.charAt(i);
      if (c == '(' || c == '[') {
        break;
      }
      if (c >= 'A' && c <= 'Z' || c >= 'a' && c <= 'z') {
        letters.append(Character.toLowerCase(c));
      }
    }
    return letters.toString();
  }
}
