package railglow.board.imports;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import railglow.board.Side;
import railglow.board.imports.PlacementColumns.Field;
import railglow.board.imports.PlacementFormat.BottomX;
import railglow.board.imports.PlacementFormat.RotationSense;

/**
 * Reads a placement table as drawing programs and assemblers write it: any of four delimiters, any
 * column order, UTF-8 or UTF-16, top and bottom in any order. Stateless.
 */
public final class PlacementReader {
  private static final double FARTHEST_MILLIMETRES = 10_000;
  private static final Pattern NUMBER =
      Pattern.compile(
          "([+-]?(?:\\d+(?:[.,]\\d*)?|[.,]\\d+)(?:[eE][+-]?\\d{1,2})?)\\s*([A-Za-z\"]*)");
  private static final Set<String> TOP =
      Set.of("top", "t", "f", "front", "1", "toplayer", "topside", "fcu", "component", "comp");
  private static final Set<String> BOTTOM =
      Set.of("bottom", "bot", "b", "back", "2", "bottomlayer", "bottomside", "bcu", "solder");

  private final String file;
  private final PlacementFormat format;
  private final PlacementTable table;
  private final List<String> notes = new ArrayList<>();

  private PlacementReader(String file, PlacementFormat format, PlacementTable table) {
    this.file = file;
    this.format = format;
    this.table = table;
  }

  /**
   * Reads the bytes of a placement file.
   *
   * @param file its name, for messages
   * @throws PlacementException for anything that is no such table, has no unit, or holds a row that
   *     can't be read
   */
  public static Placement read(String file, byte[] bytes, PlacementFormat format) {
    PlacementTable table = PlacementTable.of(file, TextBytes.decode(bytes), format.columns());
    return new PlacementReader(file, format, table).read();
  }

  private Placement read() {
    for (Field field : Field.values()) {
      Optional<String> wanted = format.columns().given(field);
      if (wanted.isPresent() && !table.index().containsKey(field)) {
        throw at(table.headers().get(0), "there is no column '" + wanted.get() + "'");
      }
    }
    Optional<LengthUnit> xUnit = unit(Field.X);
    Optional<LengthUnit> yUnit = unit(Field.Y);
    List<PlacedPart> parts = new ArrayList<>();
    for (List<Cell> row : table.rows()) {
      parts.add(part(row, xUnit, yUnit));
    }
    if (!table.index().containsKey(Field.SIDE)) {
      notes.add(file + " has no side column: every part is taken to be on the top");
    }
    if (!table.index().containsKey(Field.ROTATION)) {
      notes.add(file + " has no rotation column: every part is taken to be unrotated");
    }
    return new Placement(distinct(moved(parts)), notes);
  }

  private Optional<LengthUnit> unit(Field field) {
    Optional<LengthUnit> header = table.headerUnit(field);
    Optional<LengthUnit> said = header.isPresent() ? header : table.statedUnit();
    if (said.isPresent() && format.unit().isPresent() && !said.equals(format.unit())) {
      throw at(
          table.headers().get(table.index().get(field)),
          "the file says its unit is "
              + said.get().name().toLowerCase(Locale.ROOT)
              + ", the board file says "
              + format.unit().get().name().toLowerCase(Locale.ROOT)
              + "; correct the board file");
    }
    return said.isPresent() ? said : format.unit();
  }

  private PlacedPart part(List<Cell> row, Optional<LengthUnit> xUnit, Optional<LengthUnit> yUnit) {
    int width = table.headers().size();
    for (int i = width; i < row.size(); i++) {
      if (!row.get(i).text().isEmpty()) {
        throw at(
            row.get(i),
            "this row has more cells than the header's "
                + width
                + "; put quotes around a value that holds the delimiter");
      }
    }
    String reference = text(row, Field.REFERENCE, true);
    if (reference.isEmpty()) {
      throw at(row.get(0), "this row has no reference");
    }
    double x = length(row, Field.X, xUnit);
    double y = length(row, Field.Y, yUnit);
    return new PlacedPart(
        reference,
        text(row, Field.VALUE, false),
        text(row, Field.PACKAGE, false),
        x,
        y,
        rotation(row),
        side(row),
        row.get(0).line());
  }

  private Cell cell(List<Cell> row, Field field) {
    int at = table.index().get(field);
    if (at >= row.size()) {
      Cell last = row.get(row.size() - 1);
      throw new PlacementException(
          file,
          last.line(),
          last.column() + last.text().length(),
          "this row ends before its column '" + table.headers().get(at).text() + "'");
    }
    return row.get(at);
  }

  private String text(List<Cell> row, Field field, boolean needed) {
    Integer at = table.index().get(field);
    if (at == null || (!needed && at >= row.size())) {
      return "";
    }
    return cell(row, field).text();
  }

  private double length(List<Cell> row, Field field, Optional<LengthUnit> unit) {
    Cell cell = cell(row, field);
    Matcher matcher = number(cell, "a length");
    String suffix = matcher.group(2);
    Optional<LengthUnit> own = suffix.isEmpty() ? unit : LengthUnit.named(suffix);
    if (own.isEmpty()) {
      throw at(
          cell,
          suffix.isEmpty()
              ? "nothing says the unit of '"
                  + cell.text()
                  + "'; write 'unit: mm', 'unit: inch' or 'unit: mil' under 'placement'"
              : "'" + suffix + "' is no unit of length; mm, inch and mil are");
    }
    double millimetres = own.get().toMillimetres(value(matcher));
    if (Math.abs(millimetres) > FARTHEST_MILLIMETRES) {
      throw at(
          cell,
          "'"
              + cell.text()
              + "' is farther than "
              + FARTHEST_MILLIMETRES
              + " mm; is the unit right?");
    }
    return millimetres;
  }

  private double rotation(List<Cell> row) {
    if (!table.index().containsKey(Field.ROTATION)) {
      return 0;
    }
    Cell cell = cell(row, Field.ROTATION);
    if (cell.text().isEmpty()) {
      return 0;
    }
    Matcher matcher = number(cell, "an angle in degrees");
    if (!matcher.group(2).isEmpty() && !matcher.group(2).equalsIgnoreCase("deg")) {
      throw at(cell, "'" + cell.text() + "' is not an angle in degrees");
    }
    double degrees = value(matcher) % 360;
    if (format.rotation() == RotationSense.CLOCKWISE) {
      degrees = -degrees;
    }
    return degrees < 0 ? degrees + 360 : degrees + 0.0;
  }

  private Matcher number(Cell cell, String what) {
    Matcher matcher = NUMBER.matcher(cell.text().strip());
    if (!matcher.matches()) {
      throw at(cell, "'" + cell.text() + "' is not " + what);
    }
    return matcher;
  }

  private static double value(Matcher matcher) {
    return Double.parseDouble(matcher.group(1).replace(',', '.'));
  }

  private Side side(List<Cell> row) {
    if (!table.index().containsKey(Field.SIDE)) {
      return Side.TOP;
    }
    Cell cell = cell(row, Field.SIDE);
    String word = cell.text().toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]", "");
    if (TOP.contains(word)) {
      return Side.TOP;
    }
    if (BOTTOM.contains(word)) {
      return Side.BOTTOM;
    }
    throw at(cell, "'" + cell.text() + "' is not a side; top, T, 1, bottom, B and 2 are");
  }

  /** Bottom parts mirrored back where needed, then everything moved to the board's corner. */
  private List<PlacedPart> moved(List<PlacedPart> parts) {
    boolean negated = bottomIsNegated(parts);
    return parts.stream()
        .map(
            part -> {
              boolean flip = negated && part.side() == Side.BOTTOM;
              return at(
                  part,
                  (flip ? -part.xMillimetres() : part.xMillimetres()) - format.originXMillimetres(),
                  part.yMillimetres() - format.originYMillimetres());
            })
        .toList();
  }

  private boolean bottomIsNegated(List<PlacedPart> parts) {
    if (format.bottomX() != BottomX.DETECT) {
      return format.bottomX() == BottomX.NEGATED;
    }
    List<PlacedPart> bottom = parts.stream().filter(part -> part.side() == Side.BOTTOM).toList();
    boolean topHasNegative =
        parts.stream().anyMatch(part -> part.side() == Side.TOP && part.xMillimetres() < 0);
    boolean found =
        !bottom.isEmpty()
            && bottom.stream().allMatch(part -> part.xMillimetres() < 0)
            && !topHasNegative;
    if (found) {
      notes.add(
          file
              + ": all "
              + bottom.size()
              + " bottom parts are at negative X and no top part is: X of the bottom is taken to be"
              + " written negated ('bottom-x: as-top' if it is not)");
    }
    return found;
  }

  private static PlacedPart at(PlacedPart part, double x, double y) {
    return new PlacedPart(
        part.reference(),
        part.value(),
        part.packageName(),
        x,
        y,
        part.rotationDegrees(),
        part.side(),
        part.line());
  }

  private List<PlacedPart> distinct(List<PlacedPart> parts) {
    Map<String, Integer> seen = new TreeMap<>();
    Set<String> repeated = new TreeSet<>();
    List<PlacedPart> distinct = new ArrayList<>();
    for (PlacedPart part : parts) {
      int count = seen.merge(part.reference(), 1, Integer::sum);
      if (count > 1) {
        repeated.add(part.reference());
      }
      distinct.add(count == 1 ? part : renamed(part, part.reference() + "(" + count + ")"));
    }
    repeated.forEach(
        reference ->
            notes.add(
                file
                    + ": "
                    + reference
                    + " is there "
                    + seen.get(reference)
                    + " times; the later ones are called "
                    + reference
                    + "(2) and so on"));
    return distinct;
  }

  private static PlacedPart renamed(PlacedPart part, String reference) {
    return new PlacedPart(
        reference,
        part.value(),
        part.packageName(),
        part.xMillimetres(),
        part.yMillimetres(),
        part.rotationDegrees(),
        part.side(),
        part.line());
  }

  private PlacementException at(Cell cell, String message) {
    return new PlacementException(file, cell.line(), cell.column(), message);
  }
}
