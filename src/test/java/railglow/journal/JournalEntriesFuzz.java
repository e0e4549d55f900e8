package railglow.journal;

import com.code_intelligence.jazzer.junit.FuzzTest;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.provider.MethodSource;
import railglow.fuzz.Documented;

/** Journals of lines with right check sums and any content. */
@Tag("fuzz")
public class JournalEntriesFuzz {
  public static Stream<byte[]> seeds() {
    return Stream.of(JournalFuzz.sample());
  }

  @MethodSource("seeds")
  @FuzzTest(maxDuration = "20s")
  void entries(byte[] bytes) {
    check(bytes);
  }

  public static void check(byte[] bytes) {
    Path file = Documented.file("entries.jsonl", withCheckSums(bytes));
    Documented.only(() -> JournalReader.read(file), JournalException.class);
  }

  private static byte[] withCheckSums(byte[] bytes) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    long number = 0;
    for (String line : new String(bytes, StandardCharsets.UTF_8).split("\n", 64)) {
      try {
        JsonNode node = JournalJson.MAPPER.readTree(line);
        if (node instanceof ObjectNode object) {
          object.remove(java.util.List.of("n", "crc"));
          out.write(JournalLine.of(number++, object));
        }
      } catch (JsonProcessingException e) {
        // not a line this target is about
        continue;
      } catch (IOException e) {
        throw new AssertionError(e);
      }
    }
    return out.toByteArray();
  }
}
