package railglow.sim.picture;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

class BoardViewTest {
  @Test
  void seenFromAboveTheUpperEdgeIsAtTheTop() {
    BoardView view = BoardView.fromAbove(2, 7.5, 175.5);
    assertEquals(7.5, view.column(0, 0));
    assertEquals(175.5, view.row(0, 0));
    assertEquals(247.5, view.column(120, 80));
    assertEquals(15.5, view.row(120, 80));
  }

  @Property(seed = "1")
  void thereAndBackIsTheSamePlace(
      @ForAll @DoubleRange(min = 0, max = 120) double x,
      @ForAll @DoubleRange(min = 0, max = 80) double y) {
    BoardView tilted = new BoardView(1.9, 0.1, 9, 0.05, -1.8, 170, 0.0004, -0.0003, 1);
    double column = tilted.column(x, y);
    double row = tilted.row(x, y);
    assertEquals(x, tilted.xMillimetres(column, row), 1e-9);
    assertEquals(y, tilted.yMillimetres(column, row), 1e-9);
  }

  @Test
  void aProjectionToALineIsRefused() {
    assertThrows(IllegalArgumentException.class, () -> new BoardView(1, 1, 0, 1, 1, 0, 0, 0, 1));
  }
}
