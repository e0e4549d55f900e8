package railglow.supply;

import com.code_intelligence.jazzer.junit.FuzzTest;
import java.nio.charset.StandardCharsets;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.provider.MethodSource;
import railglow.fuzz.Documented;

/** Addresses of supplies. */
@Tag("fuzz")
public class SupplyAddressFuzz {
  public static Stream<byte[]> seeds() {
    return Stream.of("tcp://127.0.0.1:5025", "serial:/dev/ttyUSB0", "usbtmc:/dev/usbtmc0")
        .map(text -> text.getBytes(StandardCharsets.UTF_8));
  }

  @MethodSource("seeds")
  @FuzzTest(maxDuration = "20s")
  void addresses(byte[] bytes) {
    check(bytes);
  }

  public static void check(byte[] bytes) {
    String text = new String(bytes, StandardCharsets.UTF_8);
    Documented.only(
        () -> {
          SupplyAddress address = SupplyAddress.parse(text);
          if (!SupplyAddress.parse(address.toString()).toString().equals(address.toString())) {
            throw new AssertionError("changes when written and read again: " + address);
          }
        },
        IllegalArgumentException.class);
  }
}
