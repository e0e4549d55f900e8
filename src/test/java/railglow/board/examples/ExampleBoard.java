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
          parts("hx12"));

  static final List<ExampleBoard> ALL = List.of(HX12);

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
