package railglow.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import railglow.sim.heat.PlacedPart;

/** The simulated board against the example's own files. */
class Hx12BoardTest {
  private static final Path EXAMPLE = Path.of("docs/examples/hx12");
  private static final BoardLayout BOARD = BenchScenarios.hx12().board();

  @Test
  void everyPlacedPartIsWhereTheExamplePutsIt() throws IOException {
    List<String> lines = Files.readAllLines(EXAMPLE.resolve("placement.csv"));
    for (String line : lines.subList(1, lines.size())) {
      String[] cell = line.replace("\"", "").split(",");
      PlacedPart part = BOARD.part(cell[0]).orElseThrow(() -> new AssertionError(cell[0]));
      assertEquals(Double.parseDouble(cell[3]), part.xMetres() * 1e3, 1e-6, cell[0]);
      assertEquals(Double.parseDouble(cell[4]), part.yMetres() * 1e3, 1e-6, cell[0]);
    }
    assertTrue(lines.size() > 60);
  }

  @Test
  void theExamplesRegistrationPointsAreTrueWithinTheirAccuracy() throws IOException {
    Pattern point =
        Pattern.compile(
            "x: ([0-9.]+) mm, +y: ([0-9.]+) mm, +column: ([0-9.]+) px, +row: ([0-9.]+)");
    Matcher matcher = point.matcher(Files.readString(EXAMPLE.resolve("board.yaml")));
    int found = 0;
    for (; matcher.find(); found++) {
      double x = Double.parseDouble(matcher.group(1));
      double y = Double.parseDouble(matcher.group(2));
      assertEquals(BOARD.view().column(x, y), Double.parseDouble(matcher.group(3)), 0.3);
      assertEquals(BOARD.view().row(x, y), Double.parseDouble(matcher.group(4)), 0.3);
    }
    assertTrue(found >= 4, found + " points");
  }
}
