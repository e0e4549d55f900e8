package railglow.board.imports;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import railglow.board.imports.Pad.Access;

/**
 * Reads the test records of an IPC-D-356A netlist: fixed columns, the units and the net name
 * aliases of its parameter records. Records of other kinds (board edge, conductors) are counted and
 * left out. Stateless.
 */
public final class NetlistReader {
  private static final int LONGEST_LINE = 500;
  private static final Pattern UNITS = Pattern.compile("P\\s+UNITS\\s+CUST\\s+(\\S+).*");
  private static final Pattern SI_UNITS = Pattern.compile("P\\s+UNITS\\s+SI\\s*");
  private static final Pattern ALIAS = Pattern.compile("P\\s+(NNAME\\S+)\\s+(\\S.*)");
  private static final Pattern LAYERS =
      Pattern.compile("(?i)(?:C|P)\\s+.*\\bLAYERS?\\b\\D*(\\d+).*");

  private final String file;
  private final List<Pad> pads = new ArrayList<>();
  private final List<Integer> layers = new ArrayList<>();
  private final Map<String, String> aliases = new TreeMap<>();
  private final Map<String, Integer> otherKinds = new TreeMap<>();
  private final List<String> notes = new ArrayList<>();
  private NetlistUnits units;

  private NetlistReader(String file) {
    this.file = file;
  }

  /**
   * Reads the bytes of a netlist.
   *
   * @param file its name, for messages
   * @throws NetlistException for a line that is no record, a broken field, or a file without units
   *     or without a single pad
   */
  public static Netlist read(String file, byte[] bytes) {
    return new NetlistReader(file).read(TextBytes.decode(bytes));
  }

  private Netlist read(String text) {
    String[] lines = text.split("\r\n|\r|\n", -1);
    boolean ended = false;
    int number = 0;
    for (String line : lines) {
      number++;
      if (line.isBlank() || ended) {
        continue;
      }
      if (line.length() > LONGEST_LINE) {
        throw new NetlistException(
            file, number, LONGEST_LINE, "this line is too long for a record");
      }
      ended = record(new NetlistLine(file, number, line));
    }
    if (pads.isEmpty()) {
      throw new NetlistException(
          file, number, 1, "there is no pad (record 317, 327 or 367) in this file");
    }
    if (!ended) {
      notes.add(file + " has no end record 999: it may be cut short");
    }
    otherKinds.forEach(
        (kind, count) ->
            notes.add(file + ": " + count + " records of kind " + kind + " are not used"));
    return new Netlist(settled(), notes);
  }

  private boolean record(NetlistLine line) {
    char first = line.at(1);
    if (first == 'C' || first == '#') {
      return false;
    }
    if (first == 'P') {
      parameter(line);
      return false;
    }
    String kind = line.field(1, 3);
    switch (kind) {
      case "999" -> {
        return true;
      }
      case "317", "327", "367" -> {
        pads.add(line.pad(kind, unitsAt(line)));
        layers.add(line.layer());
      }
      default -> {
        if (!kind.matches("\\d{3}")) {
          throw line.problem(1, "'" + kind + "' does not start a record of an IPC-D-356A netlist");
        }
        otherKinds.merge(kind, 1, Integer::sum);
      }
    }
    return false;
  }

  private void parameter(NetlistLine line) {
    Matcher matcher = UNITS.matcher(line.text());
    Matcher alias = ALIAS.matcher(line.text());
    if (SI_UNITS.matcher(line.text()).matches()) {
      units = NetlistUnits.MICROMETRE_DEGREE;
    } else if (matcher.matches()) {
      units =
          switch (matcher.group(1)) {
            case "0" -> NetlistUnits.TENTH_MIL_DEGREE;
            case "1" -> NetlistUnits.MICROMETRE_DEGREE;
            case "2" -> NetlistUnits.TENTH_MIL_RADIAN;
            default ->
                throw line.problem(
                    matcher.start(1) + 1,
                    "units 'CUST " + matcher.group(1) + "' are unknown; 0, 1 and 2 are known");
          };
    } else if (alias.matches()) {
      aliases.put(alias.group(1), alias.group(2).strip().toUpperCase(Locale.ROOT));
    } else if (LAYERS.matcher(line.text()).matches()) {
      notes.add(file + " says: " + line.text().substring(1).strip());
    }
  }

  private NetlistUnits unitsAt(NetlistLine line) {
    if (units == null) {
      throw line.problem(
          1, "no units are given before this record; add a line 'P  UNITS CUST 0' (0.0001 inch)");
    }
    return units;
  }

  private List<Pad> settled() {
    int bottom = layers.stream().mapToInt(Integer::intValue).max().orElse(0);
    List<Pad> result = new ArrayList<>();
    for (int i = 0; i < pads.size(); i++) {
      Pad pad = pads.get(i);
      String net = aliases.getOrDefault(pad.net(), pad.net());
      result.add(pad.settled(net, access(layers.get(i), bottom)));
    }
    return result;
  }

  private static Access access(int layer, int bottom) {
    if (layer == 0) {
      return Access.BOTH;
    }
    if (layer == 1) {
      return Access.TOP;
    }
    return layer == bottom && layer > 1 ? Access.BOTTOM : Access.NEITHER;
  }
}
