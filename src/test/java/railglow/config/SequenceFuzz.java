package railglow.config;

import com.code_intelligence.jazzer.junit.FuzzTest;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.provider.MethodSource;
import railglow.fuzz.Documented;
import railglow.pulse.PulseSequence;
import railglow.pulse.Timeline;

/** Sequences of pulses, and their expansion when they are accepted. */
@Tag("fuzz")
public class SequenceFuzz {
  public static Stream<byte[]> seeds() {
    return Documented.contents("sequences", "*.yaml");
  }

  @MethodSource("seeds")
  @FuzzTest(maxDuration = "20s")
  void sequences(byte[] bytes) {
    check(bytes);
  }

  public static void check(byte[] bytes) {
    Path file = Documented.file("sequence.yaml", bytes);
    Documented.only(
        () -> {
          PulseSequence sequence = SequenceFile.read(file);
          Timeline timeline = Timeline.of(sequence);
          if (timeline.endOffsetNanos() <= 0 || timeline.edges().isEmpty()) {
            throw new AssertionError("an accepted sequence has no pulses: " + sequence);
          }
        },
        ConfigException.class);
  }
}
