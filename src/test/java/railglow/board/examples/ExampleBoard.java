package railglow.board.examples;

import java.awt.geom.Rectangle2D;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;

/**
 * An invented board and where its files go.
 *
 * @param folder below docs/examples
 * @param title printed on the board
 * @param holes mounting holes, x and y in mm
 * @param style of its placement table
 * @param titlePlace where the title starts, mm
 * @param fiducials round marks, x and y in mm
 */
record ExampleBoard(
    String folder,
    String title,
    String subtitle,
    double width,
    double height,
    List<double[]> holes,
    List<double[]> fiducials,
    Rectangle2D titlePlace,
    PlacementStyle style,
    List<ExamplePart> parts) {
  static final ExampleBoard HX12 =
      new ExampleBoard(
          "hx12",
          "HX-12",
          "greenhouse irrigation controller",
          120,
          80,
          List.of(pair(4, 4), pair(116, 4), pair(116, 76), pair(4, 76)),
          List.of(pair(84, 46), pair(28, 6)),
          new Rectangle2D.Double(49, 6.2, 0, 0),
          PlacementStyle.PLAIN,
          parts("hx12"));

  static final ExampleBoard VF3 =
      new ExampleBoard(
          "vf3",
          "VF-3",
          "fan speed controller",
          70,
          50,
          List.of(pair(3, 3), pair(67, 47), pair(3, 47), pair(67, 3)),
          List.of(pair(20, 25), pair(52, 8)),
          new Rectangle2D.Double(8, 9, 0, 0),
          PlacementStyle.MILS_CLOCKWISE,
          parts("vf3"));

  static final ExampleBoard LK7 =
      new ExampleBoard(
          "lk7",
          "LK-7",
          "stairwell light controller",
          66,
          40,
          List.of(pair(3, 3), pair(63, 37), pair(3, 37), pair(63, 3)),
          List.of(pair(44, 34), pair(8, 18)),
          new Rectangle2D.Double(44, 27, 0, 0),
          PlacementStyle.TABS_UTF16,
          parts("lk7"));

  static final ExampleBoard PM2 =
      new ExampleBoard(
          "pm2",
          "PM-2",
          "pump monitor",
          62,
          36,
          List.of(pair(3, 3), pair(59, 33), pair(3, 33), pair(59, 3)),
          List.of(pair(14, 24), pair(44, 8)),
          new Rectangle2D.Double(8, 9, 0, 0),
          PlacementStyle.BOTTOM_NEGATED,
          parts("pm2"));

  static final List<ExampleBoard> ALL = List.of(HX12, VF3, LK7, PM2);

  static double[] pair(double x, double y) {
    return new double[] {x, y};
  }

  static List<ExamplePart> parts(String plan) {
    try (InputStream in = ExampleBoard.class.getResourceAsStream("/boards/" + plan + ".txt")) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8)
          .lines()
          .filter(line -> !line.isBlank() && !line.startsWith("#"))
          .map(ExamplePart::of)
          .toList();
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }
}
