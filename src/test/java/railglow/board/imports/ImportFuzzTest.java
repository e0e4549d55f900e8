package railglow.board.imports;

import com.code_intelligence.jazzer.junit.FuzzTest;
import org.junit.jupiter.api.Tag;

/** Any bytes give a value or the exception that names a place: {@code JAZZER_FUZZ=1 mvn test}. */
@Tag("fuzz")
class ImportFuzzTest {
  @FuzzTest(maxDuration = "60s")
  void placement(byte[] bytes) {
    try {
      PlacementReader.read(
          "p.csv", bytes, PlacementFormat.RECOGNISED.withUnit(LengthUnit.MILLIMETRE));
    } catch (PlacementException e) {
      requirePlace(e);
    }
  }

  @FuzzTest(maxDuration = "60s")
  void netlist(byte[] bytes) {
    try {
      NetlistReader.read("n.ipc", bytes);
    } catch (NetlistException e) {
      requirePlace(e);
    }
  }

  private static void requirePlace(ImportException problem) {
    if (problem.line() < 1 || problem.column() < 1) {
      throw new IllegalStateException("no place in: " + problem.getMessage());
    }
  }
}
