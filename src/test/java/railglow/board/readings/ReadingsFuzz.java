package railglow.board.readings;

import com.code_intelligence.jazzer.junit.FuzzTest;
import java.nio.charset.StandardCharsets;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.provider.MethodSource;
import railglow.fuzz.Documented;

/** Tables of rail readings, and single readings from a command line. */
@Tag("fuzz")
public class ReadingsFuzz {
  public static Stream<byte[]> seeds() {
    return Stream.of(
            "rail,reading,leads,level,polarity\n3V3,6.8 ohm,0.2 ohm,0.5 V,forward\n1V8,open,,,\n",
            "rail;reading\n# a note\n3V3;\"4,7 kohm\"\n",
            "3V3=6.8 ohm")
        .map(text -> text.getBytes(StandardCharsets.UTF_8));
  }

  @MethodSource("seeds")
  @FuzzTest(maxDuration = "20s")
  void readings(byte[] bytes) {
    check(bytes);
  }

  public static void check(byte[] bytes) {
    Documented.only(() -> ReadingsReader.read("readings.csv", bytes), ReadingsException.class);
    String text = new String(bytes, StandardCharsets.UTF_8);
    Documented.only(() -> ReadingsReader.parse(text, 0.1), ReadingsException.class);
  }
}
