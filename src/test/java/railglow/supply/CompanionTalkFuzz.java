package railglow.supply;

import com.code_intelligence.jazzer.junit.FuzzTest;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.provider.MethodSource;
import railglow.fuzz.Documented;

/** What the companion process is sent when it starts. */
@Tag("fuzz")
public class CompanionTalkFuzz {
  public static Stream<byte[]> seeds() {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try {
      CompanionTalk.sendText(out, "name: supply");
    } catch (IOException e) {
      throw new AssertionError(e);
    }
    return Stream.of(out.toByteArray());
  }

  @MethodSource("seeds")
  @FuzzTest(maxDuration = "20s")
  void texts(byte[] bytes) {
    check(bytes);
  }

  public static void check(byte[] bytes) {
    Documented.only(
        () -> {
          try {
            CompanionTalk.readText(new ByteArrayInputStream(bytes));
          } catch (java.io.EOFException e) {
            throw new IOException("the text is cut short", e);
          }
        },
        IOException.class);
  }
}
