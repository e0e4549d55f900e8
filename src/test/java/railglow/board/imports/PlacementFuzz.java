package railglow.board.imports;

import com.code_intelligence.jazzer.junit.FuzzTest;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.provider.MethodSource;
import railglow.fuzz.Documented;

/** Placement tables of any layout program. */
@Tag("fuzz")
public class PlacementFuzz {
  public static Stream<byte[]> seeds() {
    return Documented.contents("docs/examples/hx12", "placement.csv")
        .map(text -> Documented.firstLines(text, 12));
  }

  @MethodSource("seeds")
  @FuzzTest(maxDuration = "20s")
  void placements(byte[] bytes) {
    check(bytes);
  }

  public static void check(byte[] bytes) {
    PlacementFormat told = PlacementFormat.RECOGNISED.withUnit(LengthUnit.MILLIMETRE);
    for (PlacementFormat format : List.of(PlacementFormat.RECOGNISED, told)) {
      Documented.only(
          () -> PlacementReader.read("placement.csv", bytes, format), PlacementException.class);
    }
  }
}
