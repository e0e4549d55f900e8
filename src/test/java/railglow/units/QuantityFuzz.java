package railglow.units;

import com.code_intelligence.jazzer.junit.FuzzTest;
import java.nio.charset.StandardCharsets;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.provider.MethodSource;
import railglow.fuzz.Documented;

/** Numbers with a unit, as users write them. */
@Tag("fuzz")
public class QuantityFuzz {
  public static Stream<byte[]> seeds() {
    return Stream.of("350 mA", "1.2 V", "-273.15 degC", "6.8 \u03a9", "1e-3 s", "5 min", "40 px")
        .map(text -> text.getBytes(StandardCharsets.UTF_8));
  }

  @MethodSource("seeds")
  @FuzzTest(maxDuration = "20s")
  void quantities(byte[] bytes) {
    check(bytes);
  }

  public static void check(byte[] bytes) {
    String text = new String(bytes, StandardCharsets.UTF_8);
    for (Unit unit : Unit.values()) {
      Documented.only(
          () -> {
            double value = Quantity.parse(text, unit);
            if (!Double.isFinite(value) || Quantity.format(value, unit).isBlank()) {
              throw new AssertionError("read as " + value);
            }
          },
          QuantityException.class);
    }
  }
}
