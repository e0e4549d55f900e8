package railglow.board;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import railglow.config.BoardFile;
import railglow.thermal.HeatShape;
import railglow.thermal.HeatSource;
import railglow.thermal.InventedSource;
import railglow.units.Interval;

class HeatPathsTest {
  private static List<HeatPath> pathsAt(double column, double row, double along) throws Exception {
    Board board = BoardFile.read(Path.of("docs/examples/hx12/board.yaml")).board();
    Interval interval = new Interval(0.13, 0.16);
    HeatSource source =
        InventedSource.at(column, row)
            .variance(0.001)
            .rises(0.145, interval)
            .channels(0.1, 0.1)
            .width(4)
            .p(1e-9)
            .source();
    HeatShape shape = new HeatShape(column, row, 8, 4.2, Math.cos(along), Math.sin(along), 0.02);
    return HeatPaths.of(board, "3V3", List.of(source), List.of(shape));
  }

  /** As a short under a chip of 14 mm shows itself: a band of heat along the chip's edge. */
  @Test
  void longHeatBesideALargeChipOfTheRailIsNoTrace() throws Exception {
    assertEquals(List.of(), pathsAt(132.9, 99.0, Math.PI / 4));
  }

  @Test
  void theSameHeatFarFromAnyPartIsATrace() throws Exception {
    List<HeatPath> paths = pathsAt(153, 124, Math.PI / 2);
    assertEquals(1, paths.size());
    assertEquals(HeatPath.Kind.TRACE, paths.get(0).kind());
  }
}
