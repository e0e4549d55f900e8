package railglow.board.examples;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import railglow.board.Side;
import railglow.board.geometry.Outline;
import railglow.board.geometry.PackageOutline;

/** One part of an invented board, as its plan states it. */
record ExamplePart(
    String reference,
    String value,
    String packageName,
    double x,
    double y,
    double rotation,
    Side side,
    List<String> nets) {
  /** Sizes the board files state because the package's name does not. */
  static final Map<String, PackageOutline> STATED_SIZES =
      Map.of("TERM-2", new PackageOutline(10.2, 8.0), "TERM-3", new PackageOutline(15.3, 8.0));

  /** From a line such as {@code C37 | 10 uF | 0805 | 78.0 31.0 90 top | 3V3 GND}. */
  static ExamplePart of(String line) {
    String[] cells = line.split("\\|");
    String[] place = cells[3].strip().split(" +");
    List<String> nets = new ArrayList<>();
    for (String token : cells[4].strip().split(" +")) {
      int colon = token.indexOf(':');
      int pin = colon < 0 ? nets.size() + 1 : Integer.parseInt(token.substring(0, colon));
      while (nets.size() < pin - 1) {
        nets.add("");
      }
      nets.add(colon < 0 ? token : token.substring(colon + 1));
    }
    return new ExamplePart(
        cells[0].strip(),
        cells[1].strip(),
        cells[2].strip(),
        Double.parseDouble(place[0]),
        Double.parseDouble(place[1]),
        Double.parseDouble(place[2]),
        place[3].equals("top") ? Side.TOP : Side.BOTTOM,
        nets);
  }

  Outline outline() {
    PackageOutline size =
        Optional.ofNullable(STATED_SIZES.get(packageName))
            .or(() -> PackageOutline.of(packageName))
            .orElseThrow(() -> new IllegalStateException(packageName + " has no size"));
    return new Outline(x, y, size.widthMillimetres(), size.heightMillimetres(), rotation);
  }
}
