package railglow.config;

import com.code_intelligence.jazzer.junit.FuzzTest;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.provider.MethodSource;
import railglow.fuzz.Documented;
import railglow.link.ProofQuestion;
import railglow.link.ReplyPattern;
import railglow.supply.SupplyDescriptor;

/** Descriptors of supplies. */
@Tag("fuzz")
public class SupplyDescriptorFuzz {
  public static Stream<byte[]> seeds() {
    Stream<byte[]> shipped = Documented.contents("instruments", "supply-*.yaml");
    return Stream.concat(
        shipped,
        Documented.contents("instruments", "supply-simulated.yaml")
            .map(
                bytes ->
                    new String(bytes, StandardCharsets.UTF_8)
                        .replace("^Railglow,SimulatedSupply,", "^((a|aa|A1,)+)+([a-z]*)*,$")
                        .getBytes(StandardCharsets.UTF_8)));
  }

  @MethodSource("seeds")
  @FuzzTest(maxDuration = "20s")
  void supplies(byte[] bytes) {
    check(bytes);
  }

  public static void check(byte[] bytes) {
    Path file = Documented.file("SupplyDescriptorFuzz.yaml", bytes);
    Documented.only(() -> tried(SupplyDescriptorFile.read(file)), ConfigException.class);
  }

  /** Whatever an accepted descriptor holds, an instrument's reply is looked at in little time. */
  private static void tried(SupplyDescriptor descriptor) {
    for (String piece : List.of("a", "aA1,", " ", "1.")) {
      String longest = piece.repeat(ReplyPattern.MOST_REPLY_CHARACTERS / piece.length());
      descriptor.identity().isFoundIn(longest + "!");
      ProofQuestion.Attempt attempt = descriptor.wire().link().proof().attempt(3);
      attempt.questions().forEach(asked -> asked.answer().test(longest));
    }
  }
}
