package railglow.journal;

import com.code_intelligence.jazzer.junit.FuzzTest;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.provider.MethodSource;
import railglow.fuzz.Documented;

/** Journals, whole, damaged or cut anywhere. */
@Tag("fuzz")
public class JournalFuzz {
  public static Stream<byte[]> seeds() {
    return Stream.of(sample());
  }

  @MethodSource("seeds")
  @FuzzTest(maxDuration = "20s")
  void journals(byte[] bytes) {
    check(bytes);
  }

  public static void check(byte[] bytes) {
    Path file = Documented.file("journal.jsonl", bytes);
    Documented.only(() -> JournalReader.read(file), JournalException.class);
  }

  /** The lines of a run with every kind of entry. */
  static byte[] sample() {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try {
      long number = 0;
      out.write(JournalLine.of(number++, SampleRun.header()));
      for (Entry entry : SampleRun.entries()) {
        out.write(JournalLine.of(number++, entry));
      }
    } catch (IOException e) {
      throw new AssertionError(e);
    }
    return out.toByteArray();
  }
}
