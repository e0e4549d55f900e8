package railglow.board.imports;

import railglow.board.imports.Pad.Access;

/** One line of a netlist, read by its fixed columns (from 1, as the format counts them). */
final class NetlistLine {
  private final String file;
  private final int number;
  private final String text;

  NetlistLine(String file, int number, String text) {
    this.file = file;
    this.number = number;
    this.text = text;
  }

  String text() {
    return text;
  }

  /** The character of a column; a blank beyond the line's end. */
  char at(int column) {
    return column <= text.length() ? text.charAt(column - 1) : ' ';
  }

  /** Columns from first to last, without outer blanks. */
  String field(int first, int last) {
    if (first > text.length()) {
      return "";
    }
    return text.substring(first - 1, Math.min(last, text.length())).strip();
  }

  NetlistException problem(int column, String message) {
    return new NetlistException(file, number, column, message);
  }

  /** The pad of a test record; its side of access is settled when the whole file is known. */
  Pad pad(String kind, NetlistUnits units) {
    String net = field(4, 17);
    String reference = field(21, 26);
    boolean via = reference.equals("VIA");
    if (reference.isEmpty()) {
      throw problem(21, "columns 21-26 hold no reference and no VIA");
    }
    expect(42, 'X');
    expect(50, 'Y');
    double x = units.millimetres(signed(43, 49));
    double y = units.millimetres(signed(51, 57));
    double width = at(58) == 'X' ? units.millimetres(digits(59, 62)) : 0;
    double height = at(63) == 'Y' ? units.millimetres(digits(64, 67)) : 0;
    double rotation = at(68) == 'R' ? units.degrees(digits(69, 71)) : 0;
    return new Pad(
        net.equals("N/C") ? "" : net,
        via ? "" : reference,
        field(28, 31),
        x,
        y,
        width,
        height == 0 ? width : height,
        rotation,
        Access.NEITHER,
        !kind.equals("327"),
        number);
  }

  private void expect(int column, char letter) {
    if (at(column) != letter) {
      throw problem(column, "expected '" + letter + "' here, found '" + at(column) + "'");
    }
  }

  private int signed(int first, int last) {
    char sign = at(first);
    if (sign != '+' && sign != '-' && sign != ' ') {
      throw problem(first, "expected a sign here, found '" + sign + "'");
    }
    int value = digits(first + 1, last);
    return sign == '-' ? -value : value;
  }

  private int digits(int first, int last) {
    int value = 0;
    for (int column = first; column <= last; column++) {
      char c = at(column);
      if (c < '0' || c > '9') {
        throw problem(column, "expected a digit here, found '" + c + "'");
      }
      value = value * 10 + (c - '0');
    }
    return value;
  }

  /** The access column: 0 both sides, 1 top, the file's highest is the bottom; -1 when not said. */
  int layer() {
    return at(39) == 'A' ? digits(40, 41) : -1;
  }
}
