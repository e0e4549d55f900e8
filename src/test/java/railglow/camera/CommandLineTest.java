package railglow.camera;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.CharRange;
import net.jqwik.api.constraints.NotEmpty;
import net.jqwik.api.constraints.Size;
import net.jqwik.api.constraints.StringLength;
import org.junit.jupiter.api.Test;

class CommandLineTest {
  @Test
  void blanksPartWordsAndQuotesKeepThem() {
    assertEquals(
        List.of("sh", "-c", "cat a b", "x\"y", "", "it's"),
        CommandLine.split("  sh -c 'cat a b'\t\"x\\\"y\" '' it\\'s "));
  }

  @Test
  void whatCantBeACommandIsRefused() {
    assertThrows(IllegalArgumentException.class, () -> CommandLine.split("  "));
    assertThrows(IllegalArgumentException.class, () -> CommandLine.split("a 'b"));
    assertThrows(IllegalArgumentException.class, () -> CommandLine.split("'' b"));
  }

  @Property(tries = 200, seed = "41")
  void quotedWordsComeBackAsTheyWere(
      @ForAll @Size(min = 1, max = 5)
          List<@NotEmpty @StringLength(max = 8) @CharRange(from = ' ', to = '~') String> words) {
    StringBuilder line = new StringBuilder();
    for (String word : words) {
      line.append('\'').append(word.replace("'", "'\\''")).append("' ");
    }
    assertEquals(words, CommandLine.split(line.toString()));
  }
}
